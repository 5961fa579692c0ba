-- AlterTable
ALTER TABLE "ReadingMend" ADD COLUMN "textId" TEXT;
