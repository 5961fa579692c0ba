-- AlterTable
ALTER TABLE "Creator" ADD COLUMN "layout" JSONB;

-- CreateTable
CREATE TABLE "Variant" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" DATETIME,
    "episodeId" TEXT NOT NULL,
    "segmentId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    CONSTRAINT "Variant_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Variant_segmentId_fkey" FOREIGN KEY ("segmentId") REFERENCES "Segment" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "SwapStep" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" DATETIME,
    "variantId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "lineId" TEXT,
    "foodId" TEXT,
    "massMg" INTEGER,
    "state" TEXT,
    CONSTRAINT "SwapStep_variantId_fkey" FOREIGN KEY ("variantId") REFERENCES "Variant" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "SwapStep_lineId_fkey" FOREIGN KEY ("lineId") REFERENCES "RecipeLine" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "SwapStep_foodId_fkey" FOREIGN KEY ("foodId") REFERENCES "Food" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Reply" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" DATETIME,
    "episodeId" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    "comment" TEXT NOT NULL,
    "nutrient" TEXT,
    "number" REAL,
    "segmentId" TEXT,
    "slip" TEXT,
    "text" TEXT NOT NULL,
    CONSTRAINT "Reply_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Reply_segmentId_fkey" FOREIGN KEY ("segmentId") REFERENCES "Segment" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Piece" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" DATETIME,
    "episodeId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "ofDay" BOOLEAN NOT NULL,
    "limit" INTEGER NOT NULL,
    CONSTRAINT "Piece_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "PieceSegment" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" DATETIME,
    "pieceId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "segmentId" TEXT NOT NULL,
    CONSTRAINT "PieceSegment_pieceId_fkey" FOREIGN KEY ("pieceId") REFERENCES "Piece" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "PieceSegment_segmentId_fkey" FOREIGN KEY ("segmentId") REFERENCES "Segment" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Published" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" DATETIME,
    "lockId" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "form" TEXT NOT NULL DEFAULT 'plain',
    "at" DATETIME NOT NULL,
    CONSTRAINT "Published_lockId_fkey" FOREIGN KEY ("lockId") REFERENCES "NumbersLock" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_Published" ("at", "creatorId", "deletedAt", "id", "lockId", "rev", "text") SELECT "at", "creatorId", "deletedAt", "id", "lockId", "rev", "text" FROM "Published";
DROP TABLE "Published";
ALTER TABLE "new_Published" RENAME TO "Published";
CREATE INDEX "Published_lockId_at_idx" ON "Published"("lockId", "at");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- CreateIndex
CREATE INDEX "Variant_episodeId_id_idx" ON "Variant"("episodeId", "id");

-- CreateIndex
CREATE INDEX "Variant_segmentId_idx" ON "Variant"("segmentId");

-- CreateIndex
CREATE INDEX "SwapStep_variantId_position_idx" ON "SwapStep"("variantId", "position");

-- CreateIndex
CREATE INDEX "SwapStep_lineId_idx" ON "SwapStep"("lineId");

-- CreateIndex
CREATE INDEX "SwapStep_foodId_idx" ON "SwapStep"("foodId");

-- CreateIndex
CREATE INDEX "Reply_episodeId_id_idx" ON "Reply"("episodeId", "id");

-- CreateIndex
CREATE INDEX "Reply_segmentId_idx" ON "Reply"("segmentId");

-- CreateIndex
CREATE INDEX "Piece_episodeId_position_idx" ON "Piece"("episodeId", "position");

-- CreateIndex
CREATE INDEX "PieceSegment_pieceId_position_idx" ON "PieceSegment"("pieceId", "position");

-- CreateIndex
CREATE INDEX "PieceSegment_segmentId_idx" ON "PieceSegment"("segmentId");
