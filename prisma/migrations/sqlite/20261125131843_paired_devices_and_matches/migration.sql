-- CreateTable
CREATE TABLE "PairedDevice" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" DATETIME,
    "name" TEXT NOT NULL,
    "tokenHash" TEXT NOT NULL,
    "pairedAt" DATETIME NOT NULL,
    "endedAt" DATETIME
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
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
    "spoiltByTake" BOOLEAN NOT NULL,
    "note" TEXT NOT NULL,
    CONSTRAINT "RecipeLine_recipeId_fkey" FOREIGN KEY ("recipeId") REFERENCES "Recipe" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "RecipeLine_foodId_fkey" FOREIGN KEY ("foodId") REFERENCES "Food" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "RecipeLine_orFoodId_fkey" FOREIGN KEY ("orFoodId") REFERENCES "Food" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);
INSERT INTO "new_RecipeLine" ("asBought", "creatorId", "deletedAt", "foodId", "highDen", "highNum", "id", "leftHighMg", "leftKind", "leftLowMg", "leftMg", "lowDen", "lowNum", "madeFromId", "madeFromRev", "measureName", "note", "plannedHighMg", "plannedLowMg", "plannedMg", "position", "recipeId", "rev", "spoiltByTake", "state", "text", "unit") SELECT "asBought", "creatorId", "deletedAt", "foodId", "highDen", "highNum", "id", "leftHighMg", "leftKind", "leftLowMg", "leftMg", "lowDen", "lowNum", "madeFromId", "madeFromRev", "measureName", "note", "plannedHighMg", "plannedLowMg", "plannedMg", "position", "recipeId", "rev", "spoiltByTake", "state", "text", "unit" FROM "RecipeLine";
DROP TABLE "RecipeLine";
ALTER TABLE "new_RecipeLine" RENAME TO "RecipeLine";
CREATE INDEX "RecipeLine_recipeId_position_idx" ON "RecipeLine"("recipeId", "position");
CREATE INDEX "RecipeLine_foodId_idx" ON "RecipeLine"("foodId");
CREATE INDEX "RecipeLine_orFoodId_idx" ON "RecipeLine"("orFoodId");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- CreateIndex
CREATE INDEX "PairedDevice_tokenHash_idx" ON "PairedDevice"("tokenHash");
