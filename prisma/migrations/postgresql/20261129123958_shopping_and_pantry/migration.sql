-- No version wrote any tick before; what follows needs columns that an old one would lack.
DELETE FROM "Tick";

-- DropForeignKey
ALTER TABLE "Tick" DROP CONSTRAINT "Tick_episodeId_fkey";

-- DropForeignKey
ALTER TABLE "Tick" DROP CONSTRAINT "Tick_foodId_fkey";

-- AlterTable
ALTER TABLE "Kitchen" ADD COLUMN     "priceDriftPermille" INTEGER NOT NULL DEFAULT 50,
ADD COLUMN     "shelfUnits" TEXT NOT NULL DEFAULT 'metric';

-- AlterTable
ALTER TABLE "Segment" ADD COLUMN     "pickupReserve" INTEGER NOT NULL DEFAULT 0;

-- AlterTable
ALTER TABLE "RecipeLine" ADD COLUMN     "shopNote" TEXT NOT NULL DEFAULT '';

-- AlterTable
ALTER TABLE "Shop" ADD COLUMN     "sections" JSONB;

-- AlterTable
ALTER TABLE "Pack" ADD COLUMN     "stepMg" INTEGER;

-- AlterTable
ALTER TABLE "Price" ADD COLUMN     "count" INTEGER NOT NULL DEFAULT 1,
ADD COLUMN     "most" INTEGER,
ADD COLUMN     "until" TEXT;

-- AlterTable
ALTER TABLE "Tick" ADD COLUMN     "deviceId" TEXT NOT NULL,
ADD COLUMN     "deviceSeq" INTEGER NOT NULL,
ADD COLUMN     "kind" TEXT NOT NULL,
ADD COLUMN     "payload" JSONB NOT NULL,
ADD COLUMN     "scope" TEXT NOT NULL,
ALTER COLUMN "episodeId" DROP NOT NULL,
ALTER COLUMN "foodId" DROP NOT NULL;

-- CreateTable
CREATE TABLE "PantryFood" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "foodId" TEXT NOT NULL,
    "answer" TEXT,
    "answeredOn" TEXT,
    "remark" TEXT NOT NULL,
    "openedDays" INTEGER,
    "openedSource" TEXT NOT NULL,

    CONSTRAINT "PantryFood_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "PantryFood_creatorId_deletedAt_foodId_id_idx" ON "PantryFood"("creatorId", "deletedAt", "foodId", "id");

-- CreateIndex
CREATE INDEX "PantryFood_foodId_idx" ON "PantryFood"("foodId");

-- CreateIndex
CREATE INDEX "Tick_creatorId_scope_id_idx" ON "Tick"("creatorId", "scope", "id");

-- CreateIndex
CREATE UNIQUE INDEX "Tick_deviceId_deviceSeq_key" ON "Tick"("deviceId", "deviceSeq");

-- AddForeignKey
ALTER TABLE "PantryFood" ADD CONSTRAINT "PantryFood_foodId_fkey" FOREIGN KEY ("foodId") REFERENCES "Food"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Tick" ADD CONSTRAINT "Tick_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Tick" ADD CONSTRAINT "Tick_foodId_fkey" FOREIGN KEY ("foodId") REFERENCES "Food"("id") ON DELETE SET NULL ON UPDATE CASCADE;
