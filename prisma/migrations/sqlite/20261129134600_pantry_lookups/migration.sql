-- CreateIndex
CREATE INDEX "Pack_creatorId_deletedAt_foodId_idx" ON "Pack"("creatorId", "deletedAt", "foodId");

-- CreateIndex
CREATE INDEX "RecipeLine_madeFromId_idx" ON "RecipeLine"("madeFromId");

-- CreateIndex
CREATE INDEX "RecipeLine_creatorId_deletedAt_foodId_orFoodId_idx" ON "RecipeLine"("creatorId", "deletedAt", "foodId", "orFoodId");
