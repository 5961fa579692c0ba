-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Episode" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" DATETIME,
    "title" TEXT NOT NULL,
    "hook" TEXT NOT NULL,
    "region" TEXT NOT NULL,
    "publishOn" TEXT,
    "rateNum" INTEGER NOT NULL,
    "rateDen" INTEGER NOT NULL,
    "dropFrame" BOOLEAN NOT NULL DEFAULT false,
    "anythingElseKind" TEXT,
    "anythingElseWhat" TEXT,
    "disclosure" TEXT NOT NULL,
    "energyStep" INTEGER NOT NULL DEFAULT 1,
    "kitchenId" TEXT,
    CONSTRAINT "Episode_kitchenId_fkey" FOREIGN KEY ("kitchenId") REFERENCES "Kitchen" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);
INSERT INTO "new_Episode" ("anythingElseKind", "anythingElseWhat", "creatorId", "deletedAt", "disclosure", "energyStep", "hook", "id", "kitchenId", "publishOn", "rateDen", "rateNum", "region", "rev", "title") SELECT "anythingElseKind", "anythingElseWhat", "creatorId", "deletedAt", "disclosure", "energyStep", "hook", "id", "kitchenId", "publishOn", "rateDen", "rateNum", "region", "rev", "title" FROM "Episode";
DROP TABLE "Episode";
ALTER TABLE "new_Episode" RENAME TO "Episode";
CREATE INDEX "Episode_creatorId_deletedAt_id_idx" ON "Episode"("creatorId", "deletedAt", "id");
CREATE INDEX "Episode_creatorId_deletedAt_publishOn_id_idx" ON "Episode"("creatorId", "deletedAt", "publishOn", "id");
CREATE INDEX "Episode_kitchenId_idx" ON "Episode"("kitchenId");
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
    "chapter" BOOLEAN NOT NULL DEFAULT true,
    "plannedS" INTEGER NOT NULL,
    "spareTakes" INTEGER NOT NULL,
    "spareScope" TEXT NOT NULL,
    "pickupReserve" INTEGER NOT NULL DEFAULT 0,
    "washUpS" INTEGER NOT NULL,
    "filmedWhen" TEXT,
    "proteinPermille" INTEGER,
    "raccMg" INTEGER,
    "claimsMeal" BOOLEAN,
    CONSTRAINT "Segment_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Segment_recipeId_fkey" FOREIGN KEY ("recipeId") REFERENCES "Recipe" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);
INSERT INTO "new_Segment" ("ateHighMg", "ateKind", "ateLowMg", "ateMg", "atePermille", "batchesDen", "batchesNum", "claimsMeal", "creatorId", "deletedAt", "eatenDen", "eatenNum", "episodeId", "filmedWhen", "id", "inFrame", "kind", "outFrame", "pickupReserve", "plannedS", "position", "proteinPermille", "raccMg", "recipeId", "rev", "spareScope", "spareTakes", "title", "washUpS") SELECT "ateHighMg", "ateKind", "ateLowMg", "ateMg", "atePermille", "batchesDen", "batchesNum", "claimsMeal", "creatorId", "deletedAt", "eatenDen", "eatenNum", "episodeId", "filmedWhen", "id", "inFrame", "kind", "outFrame", "pickupReserve", "plannedS", "position", "proteinPermille", "raccMg", "recipeId", "rev", "spareScope", "spareTakes", "title", "washUpS" FROM "Segment";
DROP TABLE "Segment";
ALTER TABLE "new_Segment" RENAME TO "Segment";
CREATE INDEX "Segment_episodeId_position_idx" ON "Segment"("episodeId", "position");
CREATE INDEX "Segment_recipeId_idx" ON "Segment"("recipeId");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;
