-- CreateSchema
CREATE SCHEMA IF NOT EXISTS "public";

-- CreateTable
CREATE TABLE "Creator" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "name" TEXT NOT NULL,

    CONSTRAINT "Creator_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Change" (
    "seq" SERIAL NOT NULL,
    "groupId" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "actor" TEXT NOT NULL,
    "label" TEXT NOT NULL,
    "entity" TEXT NOT NULL,
    "entityId" TEXT NOT NULL,
    "before" TEXT,
    "after" TEXT,

    CONSTRAINT "Change_pkey" PRIMARY KEY ("seq")
);

-- CreateTable
CREATE TABLE "Draft" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "entity" TEXT NOT NULL,
    "entityId" TEXT NOT NULL,
    "baseRev" INTEGER NOT NULL,
    "payload" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Draft_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Attachment" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "sha256" TEXT NOT NULL,
    "mime" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "bytes" BYTEA NOT NULL,

    CONSTRAINT "Attachment_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ReferenceRelease" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "source" TEXT NOT NULL,
    "release" TEXT NOT NULL,
    "sha256" TEXT NOT NULL,
    "foodCount" INTEGER NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "ReferenceRelease_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Food" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "kind" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "nameFolded" TEXT NOT NULL,
    "section" TEXT NOT NULL,
    "mergedIntoId" TEXT,
    "witnessId" TEXT,
    "recipeId" TEXT,

    CONSTRAINT "Food_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "FoodVersion" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "foodId" TEXT NOT NULL,
    "seq" INTEGER NOT NULL,
    "basis" TEXT NOT NULL,
    "servingMg" INTEGER,
    "servingMl" DOUBLE PRECISION,
    "servingDecimals" INTEGER,
    "servingText" TEXT,
    "servings" DOUBLE PRECISION,
    "values" JSONB NOT NULL,
    "secondBasis" TEXT,
    "secondValues" JSONB,
    "carbBasis" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "factors" JSONB,
    "refusePercent" INTEGER,
    "refuseText" TEXT,
    "rule" TEXT NOT NULL,
    "source" TEXT NOT NULL,
    "release" TEXT NOT NULL,
    "sourceNo" TEXT NOT NULL,
    "dateRead" TEXT,
    "kept" JSONB NOT NULL,

    CONSTRAINT "FoodVersion_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "FoodMeasure" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "versionId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "qtyNum" INTEGER NOT NULL,
    "qtyDen" INTEGER NOT NULL,
    "massMg" INTEGER NOT NULL,
    "digits" INTEGER NOT NULL,
    "source" TEXT NOT NULL,

    CONSTRAINT "FoodMeasure_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "YieldObservation" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "foodId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "method" TEXT NOT NULL,
    "rawMg" INTEGER NOT NULL,
    "cookedMg" INTEGER NOT NULL,
    "source" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "YieldObservation_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "AllergenFact" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "foodId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "allergen" TEXT NOT NULL,
    "standing" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "AllergenFact_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "LineMatch" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "wordsFolded" TEXT NOT NULL,
    "foodId" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "LineMatch_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "FoodToken" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "token" TEXT NOT NULL,
    "foodId" TEXT NOT NULL,
    "rank" INTEGER NOT NULL,

    CONSTRAINT "FoodToken_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Kitchen" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "name" TEXT NOT NULL,
    "zone" TEXT NOT NULL,
    "lat" DOUBLE PRECISION,
    "lon" DOUBLE PRECISION,
    "burners" INTEGER NOT NULL,

    CONSTRAINT "Kitchen_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Oven" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "kitchenId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "racks" INTEGER NOT NULL,
    "coldMilliC" INTEGER NOT NULL,
    "heatSPerC" INTEGER NOT NULL,
    "coolSPerC" INTEGER NOT NULL,

    CONSTRAINT "Oven_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "OvenChange" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "ovenId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "fromMilliC" INTEGER NOT NULL,
    "toMilliC" INTEGER NOT NULL,
    "seconds" INTEGER NOT NULL,

    CONSTRAINT "OvenChange_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Scale" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "kitchenId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "resolutionMg" INTEGER NOT NULL,
    "accuracyPpm" INTEGER NOT NULL,

    CONSTRAINT "Scale_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "MeasureSpread" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "kitchenId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "permille" INTEGER NOT NULL,

    CONSTRAINT "MeasureSpread_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Episode" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "title" TEXT NOT NULL,
    "hook" TEXT NOT NULL,
    "region" TEXT NOT NULL,
    "publishOn" TEXT,
    "rateNum" INTEGER NOT NULL,
    "rateDen" INTEGER NOT NULL,
    "anythingElseKind" TEXT,
    "anythingElseWhat" TEXT,
    "disclosure" TEXT NOT NULL,
    "kitchenId" TEXT,

    CONSTRAINT "Episode_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "WebLink" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "episodeId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "label" TEXT NOT NULL,
    "url" TEXT NOT NULL,

    CONSTRAINT "WebLink_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Target" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "episodeId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "nutrient" TEXT NOT NULL,
    "relation" TEXT NOT NULL,
    "amount" DOUBLE PRECISION NOT NULL,
    "segmentId" TEXT,

    CONSTRAINT "Target_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Segment" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "episodeId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "recipeId" TEXT,
    "batchesNum" INTEGER NOT NULL,
    "batchesDen" INTEGER NOT NULL,
    "eatenNum" INTEGER NOT NULL,
    "eatenDen" INTEGER NOT NULL,
    "inFrame" INTEGER,
    "outFrame" INTEGER,
    "plannedS" INTEGER NOT NULL,
    "spareTakes" INTEGER NOT NULL,
    "spareScope" TEXT NOT NULL,
    "washUpS" INTEGER NOT NULL,

    CONSTRAINT "Segment_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Recipe" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "title" TEXT NOT NULL,
    "method" TEXT NOT NULL,
    "forkedFromId" TEXT,

    CONSTRAINT "Recipe_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "RecipeLine" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "recipeId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "text" TEXT NOT NULL,
    "lowNum" INTEGER,
    "lowDen" INTEGER,
    "highNum" INTEGER,
    "highDen" INTEGER,
    "unit" TEXT,
    "measureName" TEXT,
    "foodId" TEXT,
    "madeFromId" TEXT,
    "madeFromRev" INTEGER,
    "state" TEXT NOT NULL,
    "asBought" BOOLEAN NOT NULL,
    "plannedLowMg" INTEGER,
    "plannedMg" INTEGER,
    "plannedHighMg" INTEGER,
    "leftKind" TEXT NOT NULL,
    "leftLowMg" INTEGER,
    "leftMg" INTEGER,
    "leftHighMg" INTEGER,
    "spoiltByTake" BOOLEAN NOT NULL,
    "note" TEXT NOT NULL,

    CONSTRAINT "RecipeLine_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Weighing" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "recipeId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "grossMg" INTEGER NOT NULL,
    "tareMg" INTEGER NOT NULL,
    "scaleId" TEXT NOT NULL,
    "method" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Weighing_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "WeighingShare" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "weighingId" TEXT NOT NULL,
    "lineId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "num" INTEGER NOT NULL,
    "den" INTEGER NOT NULL,

    CONSTRAINT "WeighingShare_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Portion" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "recipeId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "ofCount" INTEGER,
    "massMg" INTEGER,

    CONSTRAINT "Portion_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Step" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "segmentId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "title" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "lowS" INTEGER NOT NULL,
    "usualS" INTEGER NOT NULL,
    "highS" INTEGER NOT NULL,
    "chooseMinS" INTEGER,
    "chooseMaxS" INTEGER,
    "hands" BOOLEAN NOT NULL,
    "burners" INTEGER NOT NULL,
    "racks" INTEGER NOT NULL,
    "ovenId" TEXT,
    "ovenMilliC" INTEGER,
    "coreMilliC" INTEGER,
    "restS" INTEGER NOT NULL,
    "perishableClass" TEXT,
    "onCamera" BOOLEAN NOT NULL,
    "daylight" BOOLEAN NOT NULL,
    "note" TEXT NOT NULL,

    CONSTRAINT "Step_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "StepLink" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "episodeId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "fromStepId" TEXT NOT NULL,
    "toStepId" TEXT NOT NULL,
    "fromAnchor" TEXT NOT NULL,
    "toAnchor" TEXT NOT NULL,
    "minLagS" INTEGER,
    "maxLagS" INTEGER,
    "reason" TEXT NOT NULL,

    CONSTRAINT "StepLink_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Perishable" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "segmentId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "limitS" INTEGER NOT NULL,
    "thrownAway" BOOLEAN NOT NULL,

    CONSTRAINT "Perishable_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "PerishableSpan" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "perishableId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "fromStepId" TEXT NOT NULL,
    "fromAnchor" TEXT NOT NULL,
    "toStepId" TEXT NOT NULL,
    "toAnchor" TEXT NOT NULL,

    CONSTRAINT "PerishableSpan_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Shot" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "segmentId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "title" TEXT NOT NULL,
    "stepId" TEXT,
    "framing" TEXT NOT NULL,
    "lengthS" INTEGER NOT NULL,

    CONSTRAINT "Shot_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "TalkingPoint" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "segmentId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "text" TEXT NOT NULL,

    CONSTRAINT "TalkingPoint_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "FilmingDay" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "date" TEXT NOT NULL,
    "kitchenId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "startMin" INTEGER NOT NULL,
    "wrapByMin" INTEGER,
    "mealGapMin" INTEGER NOT NULL,

    CONSTRAINT "FilmingDay_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "DayEpisode" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "dayId" TEXT NOT NULL,
    "episodeId" TEXT NOT NULL,

    CONSTRAINT "DayEpisode_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "DaySegment" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "dayId" TEXT NOT NULL,
    "segmentId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "pickup" BOOLEAN NOT NULL,

    CONSTRAINT "DaySegment_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Appointment" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "dayId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "title" TEXT NOT NULL,
    "startMin" INTEGER NOT NULL,
    "endMin" INTEGER NOT NULL,
    "hands" BOOLEAN NOT NULL,

    CONSTRAINT "Appointment_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Pin" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "dayId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "stepId" TEXT NOT NULL,
    "notBeforeMin" INTEGER NOT NULL,

    CONSTRAINT "Pin_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Plan" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "dayId" TEXT NOT NULL,
    "inputHash" TEXT NOT NULL,
    "engine" TEXT NOT NULL,
    "seed" INTEGER NOT NULL,
    "result" JSONB NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Plan_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "DayEvent" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "dayId" TEXT NOT NULL,
    "deviceId" TEXT NOT NULL,
    "deviceSeq" INTEGER NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "kind" TEXT NOT NULL,
    "refs" JSONB NOT NULL,
    "payload" JSONB NOT NULL,

    CONSTRAINT "DayEvent_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "StockLot" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "foodId" TEXT NOT NULL,
    "place" TEXT NOT NULL,
    "openedOn" TEXT,
    "useBy" TEXT,

    CONSTRAINT "StockLot_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "StockMove" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "lotId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "deltaMg" INTEGER NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "eventId" TEXT,

    CONSTRAINT "StockMove_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Shop" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "name" TEXT NOT NULL,
    "nameFolded" TEXT NOT NULL,

    CONSTRAINT "Shop_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Pack" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "foodId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "netMg" INTEGER,
    "netMl" DOUBLE PRECISION,
    "drainedMg" INTEGER,
    "gtin" TEXT,

    CONSTRAINT "Pack_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Price" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "packId" TEXT NOT NULL,
    "shopId" TEXT,
    "minor" INTEGER NOT NULL,
    "currency" TEXT NOT NULL,
    "seenOn" TEXT NOT NULL,
    "offer" BOOLEAN NOT NULL,

    CONSTRAINT "Price_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Tick" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "episodeId" TEXT NOT NULL,
    "foodId" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Tick_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "NumbersLock" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "episodeId" TEXT NOT NULL,
    "seq" INTEGER NOT NULL,
    "snapshot" TEXT NOT NULL,
    "sha256" TEXT NOT NULL,
    "schemaVersion" INTEGER NOT NULL,
    "engineVersion" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "NumbersLock_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Published" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "lockId" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Published_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Correction" (
    "id" TEXT NOT NULL,
    "creatorId" TEXT NOT NULL,
    "rev" INTEGER NOT NULL DEFAULT 1,
    "deletedAt" TIMESTAMP(3),
    "oldLockId" TEXT NOT NULL,
    "newLockId" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "on" TEXT NOT NULL,

    CONSTRAINT "Correction_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "Change_groupId_idx" ON "Change"("groupId");

-- CreateIndex
CREATE INDEX "Change_entity_entityId_seq_idx" ON "Change"("entity", "entityId", "seq");

-- CreateIndex
CREATE INDEX "Change_creatorId_seq_idx" ON "Change"("creatorId", "seq");

-- CreateIndex
CREATE INDEX "Draft_creatorId_deletedAt_entityId_idx" ON "Draft"("creatorId", "deletedAt", "entityId");

-- CreateIndex
CREATE INDEX "Attachment_sha256_idx" ON "Attachment"("sha256");

-- CreateIndex
CREATE INDEX "ReferenceRelease_source_release_idx" ON "ReferenceRelease"("source", "release");

-- CreateIndex
CREATE INDEX "Food_creatorId_deletedAt_nameFolded_id_idx" ON "Food"("creatorId", "deletedAt", "nameFolded", "id");

-- CreateIndex
CREATE INDEX "Food_kind_id_idx" ON "Food"("kind", "id");

-- CreateIndex
CREATE INDEX "FoodVersion_foodId_seq_idx" ON "FoodVersion"("foodId", "seq");

-- CreateIndex
CREATE INDEX "FoodVersion_source_release_sourceNo_idx" ON "FoodVersion"("source", "release", "sourceNo");

-- CreateIndex
CREATE INDEX "FoodMeasure_versionId_position_idx" ON "FoodMeasure"("versionId", "position");

-- CreateIndex
CREATE INDEX "YieldObservation_foodId_position_idx" ON "YieldObservation"("foodId", "position");

-- CreateIndex
CREATE INDEX "AllergenFact_foodId_position_idx" ON "AllergenFact"("foodId", "position");

-- CreateIndex
CREATE INDEX "LineMatch_creatorId_wordsFolded_idx" ON "LineMatch"("creatorId", "wordsFolded");

-- CreateIndex
CREATE INDEX "LineMatch_foodId_idx" ON "LineMatch"("foodId");

-- CreateIndex
CREATE INDEX "FoodToken_creatorId_token_rank_idx" ON "FoodToken"("creatorId", "token", "rank");

-- CreateIndex
CREATE INDEX "FoodToken_foodId_idx" ON "FoodToken"("foodId");

-- CreateIndex
CREATE INDEX "Kitchen_creatorId_deletedAt_id_idx" ON "Kitchen"("creatorId", "deletedAt", "id");

-- CreateIndex
CREATE INDEX "Oven_kitchenId_position_idx" ON "Oven"("kitchenId", "position");

-- CreateIndex
CREATE INDEX "OvenChange_ovenId_position_idx" ON "OvenChange"("ovenId", "position");

-- CreateIndex
CREATE INDEX "Scale_kitchenId_position_idx" ON "Scale"("kitchenId", "position");

-- CreateIndex
CREATE INDEX "MeasureSpread_kitchenId_position_idx" ON "MeasureSpread"("kitchenId", "position");

-- CreateIndex
CREATE INDEX "Episode_creatorId_deletedAt_id_idx" ON "Episode"("creatorId", "deletedAt", "id");

-- CreateIndex
CREATE INDEX "Episode_creatorId_deletedAt_publishOn_id_idx" ON "Episode"("creatorId", "deletedAt", "publishOn", "id");

-- CreateIndex
CREATE INDEX "Episode_kitchenId_idx" ON "Episode"("kitchenId");

-- CreateIndex
CREATE INDEX "WebLink_episodeId_position_idx" ON "WebLink"("episodeId", "position");

-- CreateIndex
CREATE INDEX "Target_episodeId_position_idx" ON "Target"("episodeId", "position");

-- CreateIndex
CREATE INDEX "Target_segmentId_idx" ON "Target"("segmentId");

-- CreateIndex
CREATE INDEX "Segment_episodeId_position_idx" ON "Segment"("episodeId", "position");

-- CreateIndex
CREATE INDEX "Segment_recipeId_idx" ON "Segment"("recipeId");

-- CreateIndex
CREATE INDEX "Recipe_creatorId_deletedAt_id_idx" ON "Recipe"("creatorId", "deletedAt", "id");

-- CreateIndex
CREATE INDEX "RecipeLine_recipeId_position_idx" ON "RecipeLine"("recipeId", "position");

-- CreateIndex
CREATE INDEX "RecipeLine_foodId_idx" ON "RecipeLine"("foodId");

-- CreateIndex
CREATE INDEX "Weighing_recipeId_id_idx" ON "Weighing"("recipeId", "id");

-- CreateIndex
CREATE INDEX "Weighing_scaleId_idx" ON "Weighing"("scaleId");

-- CreateIndex
CREATE INDEX "WeighingShare_weighingId_position_idx" ON "WeighingShare"("weighingId", "position");

-- CreateIndex
CREATE INDEX "WeighingShare_lineId_idx" ON "WeighingShare"("lineId");

-- CreateIndex
CREATE INDEX "Portion_recipeId_position_idx" ON "Portion"("recipeId", "position");

-- CreateIndex
CREATE INDEX "Step_segmentId_position_idx" ON "Step"("segmentId", "position");

-- CreateIndex
CREATE INDEX "Step_ovenId_idx" ON "Step"("ovenId");

-- CreateIndex
CREATE INDEX "StepLink_episodeId_position_idx" ON "StepLink"("episodeId", "position");

-- CreateIndex
CREATE INDEX "StepLink_fromStepId_idx" ON "StepLink"("fromStepId");

-- CreateIndex
CREATE INDEX "StepLink_toStepId_idx" ON "StepLink"("toStepId");

-- CreateIndex
CREATE INDEX "Perishable_segmentId_position_idx" ON "Perishable"("segmentId", "position");

-- CreateIndex
CREATE INDEX "PerishableSpan_perishableId_position_idx" ON "PerishableSpan"("perishableId", "position");

-- CreateIndex
CREATE INDEX "PerishableSpan_fromStepId_idx" ON "PerishableSpan"("fromStepId");

-- CreateIndex
CREATE INDEX "PerishableSpan_toStepId_idx" ON "PerishableSpan"("toStepId");

-- CreateIndex
CREATE INDEX "Shot_segmentId_position_idx" ON "Shot"("segmentId", "position");

-- CreateIndex
CREATE INDEX "Shot_stepId_idx" ON "Shot"("stepId");

-- CreateIndex
CREATE INDEX "TalkingPoint_segmentId_position_idx" ON "TalkingPoint"("segmentId", "position");

-- CreateIndex
CREATE INDEX "FilmingDay_creatorId_deletedAt_date_id_idx" ON "FilmingDay"("creatorId", "deletedAt", "date", "id");

-- CreateIndex
CREATE INDEX "FilmingDay_kitchenId_idx" ON "FilmingDay"("kitchenId");

-- CreateIndex
CREATE INDEX "DayEpisode_dayId_idx" ON "DayEpisode"("dayId");

-- CreateIndex
CREATE INDEX "DayEpisode_episodeId_idx" ON "DayEpisode"("episodeId");

-- CreateIndex
CREATE INDEX "DaySegment_dayId_position_idx" ON "DaySegment"("dayId", "position");

-- CreateIndex
CREATE INDEX "DaySegment_segmentId_idx" ON "DaySegment"("segmentId");

-- CreateIndex
CREATE INDEX "Appointment_dayId_position_idx" ON "Appointment"("dayId", "position");

-- CreateIndex
CREATE INDEX "Pin_dayId_position_idx" ON "Pin"("dayId", "position");

-- CreateIndex
CREATE INDEX "Pin_stepId_idx" ON "Pin"("stepId");

-- CreateIndex
CREATE INDEX "Plan_dayId_at_idx" ON "Plan"("dayId", "at");

-- CreateIndex
CREATE INDEX "DayEvent_dayId_at_id_idx" ON "DayEvent"("dayId", "at", "id");

-- CreateIndex
CREATE UNIQUE INDEX "DayEvent_deviceId_deviceSeq_key" ON "DayEvent"("deviceId", "deviceSeq");

-- CreateIndex
CREATE INDEX "StockLot_foodId_idx" ON "StockLot"("foodId");

-- CreateIndex
CREATE INDEX "StockLot_creatorId_deletedAt_id_idx" ON "StockLot"("creatorId", "deletedAt", "id");

-- CreateIndex
CREATE INDEX "StockMove_lotId_id_idx" ON "StockMove"("lotId", "id");

-- CreateIndex
CREATE INDEX "StockMove_eventId_idx" ON "StockMove"("eventId");

-- CreateIndex
CREATE INDEX "Shop_creatorId_deletedAt_nameFolded_id_idx" ON "Shop"("creatorId", "deletedAt", "nameFolded", "id");

-- CreateIndex
CREATE INDEX "Pack_foodId_id_idx" ON "Pack"("foodId", "id");

-- CreateIndex
CREATE INDEX "Pack_gtin_idx" ON "Pack"("gtin");

-- CreateIndex
CREATE INDEX "Price_packId_seenOn_id_idx" ON "Price"("packId", "seenOn", "id");

-- CreateIndex
CREATE INDEX "Price_shopId_idx" ON "Price"("shopId");

-- CreateIndex
CREATE INDEX "Tick_episodeId_idx" ON "Tick"("episodeId");

-- CreateIndex
CREATE INDEX "Tick_foodId_idx" ON "Tick"("foodId");

-- CreateIndex
CREATE INDEX "NumbersLock_episodeId_seq_idx" ON "NumbersLock"("episodeId", "seq");

-- CreateIndex
CREATE INDEX "Published_lockId_at_idx" ON "Published"("lockId", "at");

-- CreateIndex
CREATE INDEX "Correction_oldLockId_idx" ON "Correction"("oldLockId");

-- CreateIndex
CREATE INDEX "Correction_newLockId_idx" ON "Correction"("newLockId");

-- AddForeignKey
ALTER TABLE "FoodVersion" ADD CONSTRAINT "FoodVersion_foodId_fkey" FOREIGN KEY ("foodId") REFERENCES "Food"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "FoodMeasure" ADD CONSTRAINT "FoodMeasure_versionId_fkey" FOREIGN KEY ("versionId") REFERENCES "FoodVersion"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "YieldObservation" ADD CONSTRAINT "YieldObservation_foodId_fkey" FOREIGN KEY ("foodId") REFERENCES "Food"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "AllergenFact" ADD CONSTRAINT "AllergenFact_foodId_fkey" FOREIGN KEY ("foodId") REFERENCES "Food"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "LineMatch" ADD CONSTRAINT "LineMatch_foodId_fkey" FOREIGN KEY ("foodId") REFERENCES "Food"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "FoodToken" ADD CONSTRAINT "FoodToken_foodId_fkey" FOREIGN KEY ("foodId") REFERENCES "Food"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Oven" ADD CONSTRAINT "Oven_kitchenId_fkey" FOREIGN KEY ("kitchenId") REFERENCES "Kitchen"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "OvenChange" ADD CONSTRAINT "OvenChange_ovenId_fkey" FOREIGN KEY ("ovenId") REFERENCES "Oven"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Scale" ADD CONSTRAINT "Scale_kitchenId_fkey" FOREIGN KEY ("kitchenId") REFERENCES "Kitchen"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "MeasureSpread" ADD CONSTRAINT "MeasureSpread_kitchenId_fkey" FOREIGN KEY ("kitchenId") REFERENCES "Kitchen"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Episode" ADD CONSTRAINT "Episode_kitchenId_fkey" FOREIGN KEY ("kitchenId") REFERENCES "Kitchen"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "WebLink" ADD CONSTRAINT "WebLink_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Target" ADD CONSTRAINT "Target_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Target" ADD CONSTRAINT "Target_segmentId_fkey" FOREIGN KEY ("segmentId") REFERENCES "Segment"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Segment" ADD CONSTRAINT "Segment_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Segment" ADD CONSTRAINT "Segment_recipeId_fkey" FOREIGN KEY ("recipeId") REFERENCES "Recipe"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "RecipeLine" ADD CONSTRAINT "RecipeLine_recipeId_fkey" FOREIGN KEY ("recipeId") REFERENCES "Recipe"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "RecipeLine" ADD CONSTRAINT "RecipeLine_foodId_fkey" FOREIGN KEY ("foodId") REFERENCES "Food"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Weighing" ADD CONSTRAINT "Weighing_recipeId_fkey" FOREIGN KEY ("recipeId") REFERENCES "Recipe"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Weighing" ADD CONSTRAINT "Weighing_scaleId_fkey" FOREIGN KEY ("scaleId") REFERENCES "Scale"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "WeighingShare" ADD CONSTRAINT "WeighingShare_weighingId_fkey" FOREIGN KEY ("weighingId") REFERENCES "Weighing"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "WeighingShare" ADD CONSTRAINT "WeighingShare_lineId_fkey" FOREIGN KEY ("lineId") REFERENCES "RecipeLine"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Portion" ADD CONSTRAINT "Portion_recipeId_fkey" FOREIGN KEY ("recipeId") REFERENCES "Recipe"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Step" ADD CONSTRAINT "Step_segmentId_fkey" FOREIGN KEY ("segmentId") REFERENCES "Segment"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Step" ADD CONSTRAINT "Step_ovenId_fkey" FOREIGN KEY ("ovenId") REFERENCES "Oven"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StepLink" ADD CONSTRAINT "StepLink_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StepLink" ADD CONSTRAINT "StepLink_fromStepId_fkey" FOREIGN KEY ("fromStepId") REFERENCES "Step"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StepLink" ADD CONSTRAINT "StepLink_toStepId_fkey" FOREIGN KEY ("toStepId") REFERENCES "Step"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Perishable" ADD CONSTRAINT "Perishable_segmentId_fkey" FOREIGN KEY ("segmentId") REFERENCES "Segment"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PerishableSpan" ADD CONSTRAINT "PerishableSpan_perishableId_fkey" FOREIGN KEY ("perishableId") REFERENCES "Perishable"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PerishableSpan" ADD CONSTRAINT "PerishableSpan_fromStepId_fkey" FOREIGN KEY ("fromStepId") REFERENCES "Step"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PerishableSpan" ADD CONSTRAINT "PerishableSpan_toStepId_fkey" FOREIGN KEY ("toStepId") REFERENCES "Step"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Shot" ADD CONSTRAINT "Shot_segmentId_fkey" FOREIGN KEY ("segmentId") REFERENCES "Segment"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Shot" ADD CONSTRAINT "Shot_stepId_fkey" FOREIGN KEY ("stepId") REFERENCES "Step"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "TalkingPoint" ADD CONSTRAINT "TalkingPoint_segmentId_fkey" FOREIGN KEY ("segmentId") REFERENCES "Segment"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "FilmingDay" ADD CONSTRAINT "FilmingDay_kitchenId_fkey" FOREIGN KEY ("kitchenId") REFERENCES "Kitchen"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "DayEpisode" ADD CONSTRAINT "DayEpisode_dayId_fkey" FOREIGN KEY ("dayId") REFERENCES "FilmingDay"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "DayEpisode" ADD CONSTRAINT "DayEpisode_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "DaySegment" ADD CONSTRAINT "DaySegment_dayId_fkey" FOREIGN KEY ("dayId") REFERENCES "FilmingDay"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "DaySegment" ADD CONSTRAINT "DaySegment_segmentId_fkey" FOREIGN KEY ("segmentId") REFERENCES "Segment"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Appointment" ADD CONSTRAINT "Appointment_dayId_fkey" FOREIGN KEY ("dayId") REFERENCES "FilmingDay"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Pin" ADD CONSTRAINT "Pin_dayId_fkey" FOREIGN KEY ("dayId") REFERENCES "FilmingDay"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Pin" ADD CONSTRAINT "Pin_stepId_fkey" FOREIGN KEY ("stepId") REFERENCES "Step"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Plan" ADD CONSTRAINT "Plan_dayId_fkey" FOREIGN KEY ("dayId") REFERENCES "FilmingDay"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "DayEvent" ADD CONSTRAINT "DayEvent_dayId_fkey" FOREIGN KEY ("dayId") REFERENCES "FilmingDay"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StockLot" ADD CONSTRAINT "StockLot_foodId_fkey" FOREIGN KEY ("foodId") REFERENCES "Food"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StockMove" ADD CONSTRAINT "StockMove_lotId_fkey" FOREIGN KEY ("lotId") REFERENCES "StockLot"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StockMove" ADD CONSTRAINT "StockMove_eventId_fkey" FOREIGN KEY ("eventId") REFERENCES "DayEvent"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Pack" ADD CONSTRAINT "Pack_foodId_fkey" FOREIGN KEY ("foodId") REFERENCES "Food"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Price" ADD CONSTRAINT "Price_packId_fkey" FOREIGN KEY ("packId") REFERENCES "Pack"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Price" ADD CONSTRAINT "Price_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Tick" ADD CONSTRAINT "Tick_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Tick" ADD CONSTRAINT "Tick_foodId_fkey" FOREIGN KEY ("foodId") REFERENCES "Food"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Published" ADD CONSTRAINT "Published_lockId_fkey" FOREIGN KEY ("lockId") REFERENCES "NumbersLock"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Correction" ADD CONSTRAINT "Correction_oldLockId_fkey" FOREIGN KEY ("oldLockId") REFERENCES "NumbersLock"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Correction" ADD CONSTRAINT "Correction_newLockId_fkey" FOREIGN KEY ("newLockId") REFERENCES "NumbersLock"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
