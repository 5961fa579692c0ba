-- AlterTable
ALTER TABLE "Episode" ADD COLUMN     "dropFrame" BOOLEAN NOT NULL DEFAULT false;

-- AlterTable
ALTER TABLE "Segment" ADD COLUMN     "chapter" BOOLEAN NOT NULL DEFAULT true;
