-- AlterTable
ALTER TABLE "Attachment" DROP COLUMN "bytes",
ADD COLUMN     "size" INTEGER NOT NULL,
ADD COLUMN     "versionId" TEXT NOT NULL;

-- AlterTable
ALTER TABLE "FoodVersion" ADD COLUMN     "refuseInValues" BOOLEAN NOT NULL DEFAULT false;

-- AlterTable
ALTER TABLE "YieldObservation" ADD COLUMN     "lineId" TEXT,
ADD COLUMN     "ownHalfMg" INTEGER;

-- AlterTable
ALTER TABLE "Segment" ADD COLUMN     "ateHighMg" INTEGER,
ADD COLUMN     "ateKind" TEXT NOT NULL DEFAULT 'share',
ADD COLUMN     "ateLowMg" INTEGER,
ADD COLUMN     "ateMg" INTEGER,
ADD COLUMN     "atePermille" INTEGER;

-- AlterTable
ALTER TABLE "Recipe" ADD COLUMN     "cookingSource" TEXT,
ADD COLUMN     "cookingSpreadPermille" INTEGER,
ADD COLUMN     "fatPermille" INTEGER,
ADD COLUMN     "moisturePermille" INTEGER;

-- AlterTable
ALTER TABLE "RecipeLine" ADD COLUMN     "bounded" JSONB,
ADD COLUMN     "cookMethod" TEXT,
ADD COLUMN     "leftMade" TEXT NOT NULL DEFAULT 'alike',
ADD COLUMN     "leftWhere" TEXT NOT NULL DEFAULT 'pan',
ADD COLUMN     "retention" TEXT;

-- AlterTable
ALTER TABLE "Weighing" ADD COLUMN     "afterId" TEXT;

-- AlterTable
ALTER TABLE "Portion" ADD COLUMN     "permille" INTEGER,
ADD COLUMN     "shareDen" INTEGER,
ADD COLUMN     "shareNum" INTEGER;

-- CreateIndex
CREATE INDEX "Attachment_versionId_idx" ON "Attachment"("versionId");

-- AddForeignKey
ALTER TABLE "Attachment" ADD CONSTRAINT "Attachment_versionId_fkey" FOREIGN KEY ("versionId") REFERENCES "FoodVersion"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
