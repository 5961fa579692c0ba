-- AlterTable
ALTER TABLE "Kitchen" ADD COLUMN     "cameraChangeS" INTEGER,
ADD COLUMN     "cleanDownS" INTEGER NOT NULL DEFAULT 300,
ADD COLUMN     "counterPlaces" INTEGER,
ADD COLUMN     "videoMbps" INTEGER;

-- AlterTable
ALTER TABLE "Segment" ADD COLUMN     "filmedWhen" TEXT;

-- AlterTable
ALTER TABLE "Step" DROP COLUMN "perishableClass",
ADD COLUMN     "applianceId" TEXT,
ADD COLUMN     "cameraSetUp" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "contact" TEXT,
ADD COLUMN     "counter" INTEGER NOT NULL DEFAULT 0,
ADD COLUMN     "evening" BOOLEAN NOT NULL DEFAULT false;

-- AlterTable
ALTER TABLE "FilmingDay" ADD COLUMN     "lightMarginMin" INTEGER NOT NULL DEFAULT 30,
ADD COLUMN     "outfit" TEXT NOT NULL DEFAULT '';

-- AlterTable
ALTER TABLE "DaySegment" ADD COLUMN     "fate" TEXT,
ADD COLUMN     "part" TEXT NOT NULL DEFAULT 'all';

-- AlterTable
ALTER TABLE "Pin" ADD COLUMN     "notAfterMin" INTEGER,
ALTER COLUMN "notBeforeMin" DROP NOT NULL;

-- CreateTable
CREATE TABLE "Appliance" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "kitchenId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "places" INTEGER NOT NULL,

    CONSTRAINT "Appliance_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "HouseShot" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "kitchenId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "title" TEXT NOT NULL,
    "moment" TEXT NOT NULL,
    "framing" TEXT NOT NULL,
    "lengthS" INTEGER NOT NULL,

    CONSTRAINT "HouseShot_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "Appliance_kitchenId_position_idx" ON "Appliance"("kitchenId", "position");

-- CreateIndex
CREATE INDEX "HouseShot_kitchenId_position_idx" ON "HouseShot"("kitchenId", "position");

-- CreateIndex
CREATE INDEX "Step_applianceId_idx" ON "Step"("applianceId");

-- AddForeignKey
ALTER TABLE "Appliance" ADD CONSTRAINT "Appliance_kitchenId_fkey" FOREIGN KEY ("kitchenId") REFERENCES "Kitchen"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "HouseShot" ADD CONSTRAINT "HouseShot_kitchenId_fkey" FOREIGN KEY ("kitchenId") REFERENCES "Kitchen"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Step" ADD CONSTRAINT "Step_applianceId_fkey" FOREIGN KEY ("applianceId") REFERENCES "Appliance"("id") ON DELETE SET NULL ON UPDATE CASCADE;
