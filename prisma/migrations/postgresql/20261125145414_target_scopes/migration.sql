-- AlterTable
ALTER TABLE "Target" ADD COLUMN     "portionId" TEXT;

-- CreateIndex
CREATE INDEX "Target_portionId_idx" ON "Target"("portionId");

-- AddForeignKey
ALTER TABLE "Target" ADD CONSTRAINT "Target_portionId_fkey" FOREIGN KEY ("portionId") REFERENCES "Portion"("id") ON DELETE SET NULL ON UPDATE CASCADE;
