-- CreateIndex
CREATE INDEX "Correction_creatorId_deletedAt_id_idx" ON "Correction"("creatorId", "deletedAt", "id");
