-- AlterTable
ALTER TABLE "Segment" ADD COLUMN "filmedWhen" TEXT;

-- CreateTable
CREATE TABLE "Appliance" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" DATETIME,
    "kitchenId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "places" INTEGER NOT NULL,
    CONSTRAINT "Appliance_kitchenId_fkey" FOREIGN KEY ("kitchenId") REFERENCES "Kitchen" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "HouseShot" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" DATETIME,
    "kitchenId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "title" TEXT NOT NULL,
    "moment" TEXT NOT NULL,
    "framing" TEXT NOT NULL,
    "lengthS" INTEGER NOT NULL,
    CONSTRAINT "HouseShot_kitchenId_fkey" FOREIGN KEY ("kitchenId") REFERENCES "Kitchen" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_DaySegment" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" DATETIME,
    "dayId" TEXT NOT NULL,
    "segmentId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "pickup" BOOLEAN NOT NULL,
    "part" TEXT NOT NULL DEFAULT 'all',
    "fate" TEXT,
    CONSTRAINT "DaySegment_dayId_fkey" FOREIGN KEY ("dayId") REFERENCES "FilmingDay" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "DaySegment_segmentId_fkey" FOREIGN KEY ("segmentId") REFERENCES "Segment" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_DaySegment" ("creatorId", "dayId", "deletedAt", "id", "pickup", "position", "rev", "segmentId") SELECT "creatorId", "dayId", "deletedAt", "id", "pickup", "position", "rev", "segmentId" FROM "DaySegment";
DROP TABLE "DaySegment";
ALTER TABLE "new_DaySegment" RENAME TO "DaySegment";
CREATE INDEX "DaySegment_dayId_position_idx" ON "DaySegment"("dayId", "position");
CREATE INDEX "DaySegment_segmentId_idx" ON "DaySegment"("segmentId");
CREATE TABLE "new_FilmingDay" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" DATETIME,
    "date" TEXT NOT NULL,
    "kitchenId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "startMin" INTEGER NOT NULL,
    "wrapByMin" INTEGER,
    "mealGapMin" INTEGER NOT NULL,
    "lightMarginMin" INTEGER NOT NULL DEFAULT 30,
    "outfit" TEXT NOT NULL DEFAULT '',
    CONSTRAINT "FilmingDay_kitchenId_fkey" FOREIGN KEY ("kitchenId") REFERENCES "Kitchen" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_FilmingDay" ("creatorId", "date", "deletedAt", "id", "kind", "kitchenId", "mealGapMin", "rev", "startMin", "wrapByMin") SELECT "creatorId", "date", "deletedAt", "id", "kind", "kitchenId", "mealGapMin", "rev", "startMin", "wrapByMin" FROM "FilmingDay";
DROP TABLE "FilmingDay";
ALTER TABLE "new_FilmingDay" RENAME TO "FilmingDay";
CREATE INDEX "FilmingDay_creatorId_deletedAt_date_id_idx" ON "FilmingDay"("creatorId", "deletedAt", "date", "id");
CREATE INDEX "FilmingDay_kitchenId_idx" ON "FilmingDay"("kitchenId");
CREATE TABLE "new_Kitchen" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" DATETIME,
    "name" TEXT NOT NULL,
    "zone" TEXT NOT NULL,
    "lat" REAL,
    "lon" REAL,
    "burners" INTEGER NOT NULL,
    "cameraChangeS" INTEGER,
    "counterPlaces" INTEGER,
    "cleanDownS" INTEGER NOT NULL DEFAULT 300,
    "videoMbps" INTEGER
);
INSERT INTO "new_Kitchen" ("burners", "creatorId", "deletedAt", "id", "lat", "lon", "name", "rev", "zone") SELECT "burners", "creatorId", "deletedAt", "id", "lat", "lon", "name", "rev", "zone" FROM "Kitchen";
DROP TABLE "Kitchen";
ALTER TABLE "new_Kitchen" RENAME TO "Kitchen";
CREATE INDEX "Kitchen_creatorId_deletedAt_id_idx" ON "Kitchen"("creatorId", "deletedAt", "id");
CREATE TABLE "new_Pin" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" DATETIME,
    "dayId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "stepId" TEXT NOT NULL,
    "notBeforeMin" INTEGER,
    "notAfterMin" INTEGER,
    CONSTRAINT "Pin_dayId_fkey" FOREIGN KEY ("dayId") REFERENCES "FilmingDay" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Pin_stepId_fkey" FOREIGN KEY ("stepId") REFERENCES "Step" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_Pin" ("creatorId", "dayId", "deletedAt", "id", "notBeforeMin", "position", "rev", "stepId") SELECT "creatorId", "dayId", "deletedAt", "id", "notBeforeMin", "position", "rev", "stepId" FROM "Pin";
DROP TABLE "Pin";
ALTER TABLE "new_Pin" RENAME TO "Pin";
CREATE INDEX "Pin_dayId_position_idx" ON "Pin"("dayId", "position");
CREATE INDEX "Pin_stepId_idx" ON "Pin"("stepId");
CREATE TABLE "new_Step" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" DATETIME,
    "segmentId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "title" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "lowS" INTEGER NOT NULL,
    "usualS" INTEGER NOT NULL,
    "highS" INTEGER NOT NULL,
    "chooseMinS" INTEGER,
    "chooseMaxS" INTEGER,
    "hands" BOOLEAN NOT NULL,
    "burners" INTEGER NOT NULL,
    "racks" INTEGER NOT NULL,
    "ovenId" TEXT,
    "ovenMilliC" INTEGER,
    "coreMilliC" INTEGER,
    "restS" INTEGER NOT NULL,
    "contact" TEXT,
    "evening" BOOLEAN NOT NULL DEFAULT false,
    "cameraSetUp" TEXT NOT NULL DEFAULT '',
    "applianceId" TEXT,
    "counter" INTEGER NOT NULL DEFAULT 0,
    "onCamera" BOOLEAN NOT NULL,
    "daylight" BOOLEAN NOT NULL,
    "note" TEXT NOT NULL,
    CONSTRAINT "Step_segmentId_fkey" FOREIGN KEY ("segmentId") REFERENCES "Segment" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Step_ovenId_fkey" FOREIGN KEY ("ovenId") REFERENCES "Oven" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "Step_applianceId_fkey" FOREIGN KEY ("applianceId") REFERENCES "Appliance" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);
INSERT INTO "new_Step" ("burners", "chooseMaxS", "chooseMinS", "coreMilliC", "creatorId", "daylight", "deletedAt", "hands", "highS", "id", "lowS", "note", "onCamera", "ovenId", "ovenMilliC", "position", "racks", "restS", "rev", "role", "segmentId", "title", "usualS") SELECT "burners", "chooseMaxS", "chooseMinS", "coreMilliC", "creatorId", "daylight", "deletedAt", "hands", "highS", "id", "lowS", "note", "onCamera", "ovenId", "ovenMilliC", "position", "racks", "restS", "rev", "role", "segmentId", "title", "usualS" FROM "Step";
DROP TABLE "Step";
ALTER TABLE "new_Step" RENAME TO "Step";
CREATE INDEX "Step_segmentId_position_idx" ON "Step"("segmentId", "position");
CREATE INDEX "Step_ovenId_idx" ON "Step"("ovenId");
CREATE INDEX "Step_applianceId_idx" ON "Step"("applianceId");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- CreateIndex
CREATE INDEX "Appliance_kitchenId_position_idx" ON "Appliance"("kitchenId", "position");

-- CreateIndex
CREATE INDEX "HouseShot_kitchenId_position_idx" ON "HouseShot"("kitchenId", "position");
