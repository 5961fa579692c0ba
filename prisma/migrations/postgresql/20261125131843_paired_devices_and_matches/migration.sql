-- AlterTable
ALTER TABLE "RecipeLine" ADD COLUMN     "match" TEXT NOT NULL DEFAULT 'confirmed',
ADD COLUMN     "orFoodId" TEXT;

-- CreateTable
CREATE TABLE "PairedDevice" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "name" TEXT NOT NULL,
    "tokenHash" TEXT NOT NULL,
    "pairedAt" TIMESTAMP(3) NOT NULL,
    "endedAt" TIMESTAMP(3),

    CONSTRAINT "PairedDevice_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "PairedDevice_tokenHash_idx" ON "PairedDevice"("tokenHash");

-- CreateIndex
CREATE INDEX "RecipeLine_orFoodId_idx" ON "RecipeLine"("orFoodId");

-- AddForeignKey
ALTER TABLE "RecipeLine" ADD CONSTRAINT "RecipeLine_orFoodId_fkey" FOREIGN KEY ("orFoodId") REFERENCES "Food"("id") ON DELETE SET NULL ON UPDATE CASCADE;
