-- DropIndex
DROP INDEX "FoodToken_creatorId_token_rank_idx";

-- AlterTable
ALTER TABLE "FoodVersion" ADD COLUMN "brand" TEXT;
ALTER TABLE "FoodVersion" ADD COLUMN "gtin" TEXT;
ALTER TABLE "FoodVersion" ADD COLUMN "ingredients" TEXT;

-- CreateIndex
CREATE INDEX "FoodToken_creatorId_token_rank_foodId_idx" ON "FoodToken"("creatorId", "token", "rank", "foodId");
