-- No version wrote any tick before; what follows needs columns that an old one would lack.
DELETE FROM "Tick";

-- AlterTable
ALTER TABLE "Pack" ADD COLUMN "stepMg" INTEGER;

-- AlterTable
ALTER TABLE "Shop" ADD COLUMN "sections" JSONB;

-- CreateTable
CREATE TABLE "PantryFood" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" DATETIME,
    "foodId" TEXT NOT NULL,
    "answer" TEXT,
    "answeredOn" TEXT,
    "remark" TEXT NOT NULL,
    "openedDays" INTEGER,
    "openedSource" TEXT NOT NULL,
    CONSTRAINT "PantryFood_foodId_fkey" FOREIGN KEY ("foodId") REFERENCES "Food" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
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
    "videoMbps" INTEGER,
    "shelfUnits" TEXT NOT NULL DEFAULT 'metric',
    "priceDriftPermille" INTEGER NOT NULL DEFAULT 50
);
INSERT INTO "new_Kitchen" ("burners", "cameraChangeS", "cleanDownS", "counterPlaces", "creatorId", "deletedAt", "id", "lat", "lon", "name", "rev", "videoMbps", "zone") SELECT "burners", "cameraChangeS", "cleanDownS", "counterPlaces", "creatorId", "deletedAt", "id", "lat", "lon", "name", "rev", "videoMbps", "zone" FROM "Kitchen";
DROP TABLE "Kitchen";
ALTER TABLE "new_Kitchen" RENAME TO "Kitchen";
CREATE INDEX "Kitchen_creatorId_deletedAt_id_idx" ON "Kitchen"("creatorId", "deletedAt", "id");
CREATE TABLE "new_Price" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" DATETIME,
    "packId" TEXT NOT NULL,
    "shopId" TEXT,
    "minor" INTEGER NOT NULL,
    "currency" TEXT NOT NULL,
    "seenOn" TEXT NOT NULL,
    "offer" BOOLEAN NOT NULL,
    "count" INTEGER NOT NULL DEFAULT 1,
    "most" INTEGER,
    "until" TEXT,
    CONSTRAINT "Price_packId_fkey" FOREIGN KEY ("packId") REFERENCES "Pack" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Price_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);
INSERT INTO "new_Price" ("creatorId", "currency", "deletedAt", "id", "minor", "offer", "packId", "rev", "seenOn", "shopId") SELECT "creatorId", "currency", "deletedAt", "id", "minor", "offer", "packId", "rev", "seenOn", "shopId" FROM "Price";
DROP TABLE "Price";
ALTER TABLE "new_Price" RENAME TO "Price";
CREATE INDEX "Price_packId_seenOn_id_idx" ON "Price"("packId", "seenOn", "id");
CREATE INDEX "Price_shopId_idx" ON "Price"("shopId");
CREATE TABLE "new_RecipeLine" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" DATETIME,
    "recipeId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "text" TEXT NOT NULL,
    "lowNum" INTEGER,
    "lowDen" INTEGER,
    "highNum" INTEGER,
    "highDen" INTEGER,
    "unit" TEXT,
    "measureName" TEXT,
    "foodId" TEXT,
    "match" TEXT NOT NULL DEFAULT 'confirmed',
    "orFoodId" TEXT,
    "madeFromId" TEXT,
    "madeFromRev" INTEGER,
    "state" TEXT NOT NULL,
    "asBought" BOOLEAN NOT NULL,
    "plannedLowMg" INTEGER,
    "plannedMg" INTEGER,
    "plannedHighMg" INTEGER,
    "leftKind" TEXT NOT NULL,
    "leftLowMg" INTEGER,
    "leftMg" INTEGER,
    "leftHighMg" INTEGER,
    "leftWhere" TEXT NOT NULL DEFAULT 'pan',
    "leftMade" TEXT NOT NULL DEFAULT 'alike',
    "cookMethod" TEXT,
    "retention" TEXT,
    "bounded" JSONB,
    "spoiltByTake" BOOLEAN NOT NULL,
    "note" TEXT NOT NULL,
    "shopNote" TEXT NOT NULL DEFAULT '',
    CONSTRAINT "RecipeLine_recipeId_fkey" FOREIGN KEY ("recipeId") REFERENCES "Recipe" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "RecipeLine_foodId_fkey" FOREIGN KEY ("foodId") REFERENCES "Food" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "RecipeLine_orFoodId_fkey" FOREIGN KEY ("orFoodId") REFERENCES "Food" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);
INSERT INTO "new_RecipeLine" ("asBought", "bounded", "cookMethod", "creatorId", "deletedAt", "foodId", "highDen", "highNum", "id", "leftHighMg", "leftKind", "leftLowMg", "leftMade", "leftMg", "leftWhere", "lowDen", "lowNum", "madeFromId", "madeFromRev", "match", "measureName", "note", "orFoodId", "plannedHighMg", "plannedLowMg", "plannedMg", "position", "recipeId", "retention", "rev", "spoiltByTake", "state", "text", "unit") SELECT "asBought", "bounded", "cookMethod", "creatorId", "deletedAt", "foodId", "highDen", "highNum", "id", "leftHighMg", "leftKind", "leftLowMg", "leftMade", "leftMg", "leftWhere", "lowDen", "lowNum", "madeFromId", "madeFromRev", "match", "measureName", "note", "orFoodId", "plannedHighMg", "plannedLowMg", "plannedMg", "position", "recipeId", "retention", "rev", "spoiltByTake", "state", "text", "unit" FROM "RecipeLine";
DROP TABLE "RecipeLine";
ALTER TABLE "new_RecipeLine" RENAME TO "RecipeLine";
CREATE INDEX "RecipeLine_recipeId_position_idx" ON "RecipeLine"("recipeId", "position");
CREATE INDEX "RecipeLine_foodId_idx" ON "RecipeLine"("foodId");
CREATE INDEX "RecipeLine_orFoodId_idx" ON "RecipeLine"("orFoodId");
CREATE TABLE "new_Segment" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" DATETIME,
    "episodeId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "recipeId" TEXT,
    "batchesNum" INTEGER NOT NULL,
    "batchesDen" INTEGER NOT NULL,
    "eatenNum" INTEGER NOT NULL,
    "eatenDen" INTEGER NOT NULL,
    "ateKind" TEXT NOT NULL DEFAULT 'share',
    "atePermille" INTEGER,
    "ateLowMg" INTEGER,
    "ateMg" INTEGER,
    "ateHighMg" INTEGER,
    "inFrame" INTEGER,
    "outFrame" INTEGER,
    "plannedS" INTEGER NOT NULL,
    "spareTakes" INTEGER NOT NULL,
    "spareScope" TEXT NOT NULL,
    "pickupReserve" INTEGER NOT NULL DEFAULT 0,
    "washUpS" INTEGER NOT NULL,
    "filmedWhen" TEXT,
    CONSTRAINT "Segment_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Segment_recipeId_fkey" FOREIGN KEY ("recipeId") REFERENCES "Recipe" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);
INSERT INTO "new_Segment" ("ateHighMg", "ateKind", "ateLowMg", "ateMg", "atePermille", "batchesDen", "batchesNum", "creatorId", "deletedAt", "eatenDen", "eatenNum", "episodeId", "filmedWhen", "id", "inFrame", "kind", "outFrame", "plannedS", "position", "recipeId", "rev", "spareScope", "spareTakes", "title", "washUpS") SELECT "ateHighMg", "ateKind", "ateLowMg", "ateMg", "atePermille", "batchesDen", "batchesNum", "creatorId", "deletedAt", "eatenDen", "eatenNum", "episodeId", "filmedWhen", "id", "inFrame", "kind", "outFrame", "plannedS", "position", "recipeId", "rev", "spareScope", "spareTakes", "title", "washUpS" FROM "Segment";
DROP TABLE "Segment";
ALTER TABLE "new_Segment" RENAME TO "Segment";
CREATE INDEX "Segment_episodeId_position_idx" ON "Segment"("episodeId", "position");
CREATE INDEX "Segment_recipeId_idx" ON "Segment"("recipeId");
CREATE TABLE "new_Tick" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" DATETIME,
    "scope" TEXT NOT NULL,
    "episodeId" TEXT,
    "foodId" TEXT,
    "deviceId" TEXT NOT NULL,
    "deviceSeq" INTEGER NOT NULL,
    "at" DATETIME NOT NULL,
    "kind" TEXT NOT NULL,
    "payload" JSONB NOT NULL,
    CONSTRAINT "Tick_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "Tick_foodId_fkey" FOREIGN KEY ("foodId") REFERENCES "Food" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);
INSERT INTO "new_Tick" ("at", "creatorId", "deletedAt", "episodeId", "foodId", "id", "rev") SELECT "at", "creatorId", "deletedAt", "episodeId", "foodId", "id", "rev" FROM "Tick";
DROP TABLE "Tick";
ALTER TABLE "new_Tick" RENAME TO "Tick";
CREATE INDEX "Tick_creatorId_scope_id_idx" ON "Tick"("creatorId", "scope", "id");
CREATE INDEX "Tick_episodeId_idx" ON "Tick"("episodeId");
CREATE INDEX "Tick_foodId_idx" ON "Tick"("foodId");
CREATE UNIQUE INDEX "Tick_deviceId_deviceSeq_key" ON "Tick"("deviceId", "deviceSeq");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- CreateIndex
CREATE INDEX "PantryFood_creatorId_deletedAt_foodId_id_idx" ON "PantryFood"("creatorId", "deletedAt", "foodId", "id");

-- CreateIndex
CREATE INDEX "PantryFood_foodId_idx" ON "PantryFood"("foodId");
