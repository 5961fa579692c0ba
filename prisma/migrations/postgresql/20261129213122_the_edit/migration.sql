-- AlterTable
ALTER TABLE "Creator" ADD COLUMN     "wordsPerMinute" INTEGER;

-- AlterTable
ALTER TABLE "Segment" ADD COLUMN     "claimsMeal" BOOLEAN,
ADD COLUMN     "proteinPermille" INTEGER,
ADD COLUMN     "raccMg" INTEGER;

-- CreateTable
CREATE TABLE "EditText" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "episodeId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "text" TEXT NOT NULL,

    CONSTRAINT "EditText_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ReadingMend" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "episodeId" TEXT NOT NULL,
    "words" TEXT NOT NULL,
    "before" TEXT NOT NULL,
    "after" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "heard" TEXT,
    "segmentId" TEXT,
    "portionId" TEXT,
    "scope" TEXT,

    CONSTRAINT "ReadingMend_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "NamedFood" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "episodeId" TEXT NOT NULL,
    "food" TEXT NOT NULL,
    "answer" TEXT NOT NULL,

    CONSTRAINT "NamedFood_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "EditText_episodeId_position_idx" ON "EditText"("episodeId", "position");

-- CreateIndex
CREATE INDEX "ReadingMend_episodeId_id_idx" ON "ReadingMend"("episodeId", "id");

-- CreateIndex
CREATE INDEX "ReadingMend_segmentId_idx" ON "ReadingMend"("segmentId");

-- CreateIndex
CREATE INDEX "ReadingMend_portionId_idx" ON "ReadingMend"("portionId");

-- CreateIndex
CREATE INDEX "NamedFood_episodeId_id_idx" ON "NamedFood"("episodeId", "id");

-- AddForeignKey
ALTER TABLE "EditText" ADD CONSTRAINT "EditText_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ReadingMend" ADD CONSTRAINT "ReadingMend_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ReadingMend" ADD CONSTRAINT "ReadingMend_segmentId_fkey" FOREIGN KEY ("segmentId") REFERENCES "Segment"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ReadingMend" ADD CONSTRAINT "ReadingMend_portionId_fkey" FOREIGN KEY ("portionId") REFERENCES "Portion"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "NamedFood" ADD CONSTRAINT "NamedFood_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
