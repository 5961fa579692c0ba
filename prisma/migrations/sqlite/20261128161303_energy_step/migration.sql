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
    "anythingElseKind" TEXT,
    "anythingElseWhat" TEXT,
    "disclosure" TEXT NOT NULL,
    "energyStep" INTEGER NOT NULL DEFAULT 1,
    "kitchenId" TEXT,
    CONSTRAINT "Episode_kitchenId_fkey" FOREIGN KEY ("kitchenId") REFERENCES "Kitchen" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);
INSERT INTO "new_Episode" ("anythingElseKind", "anythingElseWhat", "creatorId", "deletedAt", "disclosure", "hook", "id", "kitchenId", "publishOn", "rateDen", "rateNum", "region", "rev", "title") SELECT "anythingElseKind", "anythingElseWhat", "creatorId", "deletedAt", "disclosure", "hook", "id", "kitchenId", "publishOn", "rateDen", "rateNum", "region", "rev", "title" FROM "Episode";
DROP TABLE "Episode";
ALTER TABLE "new_Episode" RENAME TO "Episode";
CREATE INDEX "Episode_creatorId_deletedAt_id_idx" ON "Episode"("creatorId", "deletedAt", "id");
CREATE INDEX "Episode_creatorId_deletedAt_publishOn_id_idx" ON "Episode"("creatorId", "deletedAt", "publishOn", "id");
CREATE INDEX "Episode_kitchenId_idx" ON "Episode"("kitchenId");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;
