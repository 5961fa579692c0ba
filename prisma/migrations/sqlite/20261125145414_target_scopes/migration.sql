-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Target" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" DATETIME,
    "episodeId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "nutrient" TEXT NOT NULL,
    "relation" TEXT NOT NULL,
    "amount" REAL NOT NULL,
    "segmentId" TEXT,
    "portionId" TEXT,
    CONSTRAINT "Target_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Target_segmentId_fkey" FOREIGN KEY ("segmentId") REFERENCES "Segment" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "Target_portionId_fkey" FOREIGN KEY ("portionId") REFERENCES "Portion" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);
INSERT INTO "new_Target" ("amount", "creatorId", "deletedAt", "episodeId", "id", "nutrient", "position", "relation", "rev", "segmentId") SELECT "amount", "creatorId", "deletedAt", "episodeId", "id", "nutrient", "position", "relation", "rev", "segmentId" FROM "Target";
DROP TABLE "Target";
ALTER TABLE "new_Target" RENAME TO "Target";
CREATE INDEX "Target_episodeId_position_idx" ON "Target"("episodeId", "position");
CREATE INDEX "Target_segmentId_idx" ON "Target"("segmentId");
CREATE INDEX "Target_portionId_idx" ON "Target"("portionId");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;
