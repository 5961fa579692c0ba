-- AlterTable
ALTER TABLE "Episode" ADD COLUMN     "energyStep" INTEGER NOT NULL DEFAULT 1;
