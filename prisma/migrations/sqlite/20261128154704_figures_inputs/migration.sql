-- AlterTable
ALTER TABLE "Portion" ADD COLUMN "permille" INTEGER;
ALTER TABLE "Portion" ADD COLUMN "shareDen" INTEGER;
ALTER TABLE "Portion" ADD COLUMN "shareNum" INTEGER;

-- AlterTable
ALTER TABLE "Recipe" ADD COLUMN "cookingSource" TEXT;
ALTER TABLE "Recipe" ADD COLUMN "cookingSpreadPermille" INTEGER;
ALTER TABLE "Recipe" ADD COLUMN "fatPermille" INTEGER;
ALTER TABLE "Recipe" ADD COLUMN "moisturePermille" INTEGER;

-- AlterTable
ALTER TABLE "Weighing" ADD COLUMN "afterId" TEXT;

-- AlterTable
ALTER TABLE "YieldObservation" ADD COLUMN "lineId" TEXT;
ALTER TABLE "YieldObservation" ADD COLUMN "ownHalfMg" INTEGER;

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Attachment" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" DATETIME,
    "sha256" TEXT NOT NULL,
    "mime" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "size" INTEGER NOT NULL,
    "versionId" TEXT NOT NULL,
    CONSTRAINT "Attachment_versionId_fkey" FOREIGN KEY ("versionId") REFERENCES "FoodVersion" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_Attachment" ("creatorId", "deletedAt", "id", "mime", "name", "rev", "sha256") SELECT "creatorId", "deletedAt", "id", "mime", "name", "rev", "sha256" FROM "Attachment";
DROP TABLE "Attachment";
ALTER TABLE "new_Attachment" RENAME TO "Attachment";
CREATE INDEX "Attachment_sha256_idx" ON "Attachment"("sha256");
CREATE INDEX "Attachment_versionId_idx" ON "Attachment"("versionId");
CREATE TABLE "new_FoodVersion" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" DATETIME,
    "foodId" TEXT NOT NULL,
    "seq" INTEGER NOT NULL,
    "basis" TEXT NOT NULL,
    "servingMg" INTEGER,
    "servingMl" REAL,
    "servingDecimals" INTEGER,
    "servingText" TEXT,
    "servings" REAL,
    "values" JSONB NOT NULL,
    "secondBasis" TEXT,
    "secondValues" JSONB,
    "carbBasis" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "factors" JSONB,
    "refusePercent" INTEGER,
    "refuseText" TEXT,
    "refuseInValues" BOOLEAN NOT NULL DEFAULT false,
    "rule" TEXT NOT NULL,
    "source" TEXT NOT NULL,
    "release" TEXT NOT NULL,
    "sourceNo" TEXT NOT NULL,
    "dateRead" TEXT,
    "kept" JSONB NOT NULL,
    CONSTRAINT "FoodVersion_foodId_fkey" FOREIGN KEY ("foodId") REFERENCES "Food" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_FoodVersion" ("basis", "carbBasis", "creatorId", "dateRead", "deletedAt", "factors", "foodId", "id", "kept", "refusePercent", "refuseText", "release", "rev", "rule", "secondBasis", "secondValues", "seq", "servingDecimals", "servingMg", "servingMl", "servingText", "servings", "source", "sourceNo", "state", "values") SELECT "basis", "carbBasis", "creatorId", "dateRead", "deletedAt", "factors", "foodId", "id", "kept", "refusePercent", "refuseText", "release", "rev", "rule", "secondBasis", "secondValues", "seq", "servingDecimals", "servingMg", "servingMl", "servingText", "servings", "source", "sourceNo", "state", "values" FROM "FoodVersion";
DROP TABLE "FoodVersion";
ALTER TABLE "new_FoodVersion" RENAME TO "FoodVersion";
CREATE INDEX "FoodVersion_foodId_seq_idx" ON "FoodVersion"("foodId", "seq");
CREATE INDEX "FoodVersion_source_release_sourceNo_idx" ON "FoodVersion"("source", "release", "sourceNo");
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
    CONSTRAINT "RecipeLine_recipeId_fkey" FOREIGN KEY ("recipeId") REFERENCES "Recipe" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "RecipeLine_foodId_fkey" FOREIGN KEY ("foodId") REFERENCES "Food" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "RecipeLine_orFoodId_fkey" FOREIGN KEY ("orFoodId") REFERENCES "Food" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);
INSERT INTO "new_RecipeLine" ("asBought", "creatorId", "deletedAt", "foodId", "highDen", "highNum", "id", "leftHighMg", "leftKind", "leftLowMg", "leftMg", "lowDen", "lowNum", "madeFromId", "madeFromRev", "match", "measureName", "note", "orFoodId", "plannedHighMg", "plannedLowMg", "plannedMg", "position", "recipeId", "rev", "spoiltByTake", "state", "text", "unit") SELECT "asBought", "creatorId", "deletedAt", "foodId", "highDen", "highNum", "id", "leftHighMg", "leftKind", "leftLowMg", "leftMg", "lowDen", "lowNum", "madeFromId", "madeFromRev", "match", "measureName", "note", "orFoodId", "plannedHighMg", "plannedLowMg", "plannedMg", "position", "recipeId", "rev", "spoiltByTake", "state", "text", "unit" FROM "RecipeLine";
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
    "washUpS" INTEGER NOT NULL,
    CONSTRAINT "Segment_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Segment_recipeId_fkey" FOREIGN KEY ("recipeId") REFERENCES "Recipe" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);
INSERT INTO "new_Segment" ("batchesDen", "batchesNum", "creatorId", "deletedAt", "eatenDen", "eatenNum", "episodeId", "id", "inFrame", "kind", "outFrame", "plannedS", "position", "recipeId", "rev", "spareScope", "spareTakes", "title", "washUpS") SELECT "batchesDen", "batchesNum", "creatorId", "deletedAt", "eatenDen", "eatenNum", "episodeId", "id", "inFrame", "kind", "outFrame", "plannedS", "position", "recipeId", "rev", "spareScope", "spareTakes", "title", "washUpS" FROM "Segment";
DROP TABLE "Segment";
ALTER TABLE "new_Segment" RENAME TO "Segment";
CREATE INDEX "Segment_episodeId_position_idx" ON "Segment"("episodeId", "position");
CREATE INDEX "Segment_recipeId_idx" ON "Segment"("recipeId");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;
