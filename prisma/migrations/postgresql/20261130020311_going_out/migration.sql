-- AlterTable
ALTER TABLE "Creator" ADD COLUMN     "layout" JSONB;

-- AlterTable
ALTER TABLE "Published" ADD COLUMN     "form" TEXT NOT NULL DEFAULT 'plain';

-- CreateTable
CREATE TABLE "Variant" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "episodeId" TEXT NOT NULL,
    "segmentId" TEXT NOT NULL,
    "name" TEXT NOT NULL,

    CONSTRAINT "Variant_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "SwapStep" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "variantId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "lineId" TEXT,
    "foodId" TEXT,
    "massMg" INTEGER,
    "state" TEXT,

    CONSTRAINT "SwapStep_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Reply" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "episodeId" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "comment" TEXT NOT NULL,
    "nutrient" TEXT,
    "number" DOUBLE PRECISION,
    "segmentId" TEXT,
    "slip" TEXT,
    "text" TEXT NOT NULL,

    CONSTRAINT "Reply_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Piece" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "episodeId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "ofDay" BOOLEAN NOT NULL,
    "limit" INTEGER NOT NULL,

    CONSTRAINT "Piece_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "PieceSegment" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "pieceId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "segmentId" TEXT NOT NULL,

    CONSTRAINT "PieceSegment_pkey" PRIMARY KEY ("id")
);

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

-- AddForeignKey
ALTER TABLE "Variant" ADD CONSTRAINT "Variant_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Variant" ADD CONSTRAINT "Variant_segmentId_fkey" FOREIGN KEY ("segmentId") REFERENCES "Segment"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SwapStep" ADD CONSTRAINT "SwapStep_variantId_fkey" FOREIGN KEY ("variantId") REFERENCES "Variant"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SwapStep" ADD CONSTRAINT "SwapStep_lineId_fkey" FOREIGN KEY ("lineId") REFERENCES "RecipeLine"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SwapStep" ADD CONSTRAINT "SwapStep_foodId_fkey" FOREIGN KEY ("foodId") REFERENCES "Food"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Reply" ADD CONSTRAINT "Reply_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Reply" ADD CONSTRAINT "Reply_segmentId_fkey" FOREIGN KEY ("segmentId") REFERENCES "Segment"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Piece" ADD CONSTRAINT "Piece_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PieceSegment" ADD CONSTRAINT "PieceSegment_pieceId_fkey" FOREIGN KEY ("pieceId") REFERENCES "Piece"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PieceSegment" ADD CONSTRAINT "PieceSegment_segmentId_fkey" FOREIGN KEY ("segmentId") REFERENCES "Segment"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
