-- AlterTable
ALTER TABLE "Oven" ADD COLUMN     "mostMilliC" INTEGER;
