-- DropIndex
DROP INDEX "RouteStep_station_state_idx";

-- AlterTable
ALTER TABLE "RouteStep" ADD COLUMN     "queue" TEXT NOT NULL DEFAULT '';

-- CreateTable
CREATE TABLE "CustomerSuffix" (
    "customerId" TEXT NOT NULL,
    "suffix" TEXT NOT NULL,

    CONSTRAINT "CustomerSuffix_pkey" PRIMARY KEY ("suffix","customerId")
);

-- CreateTable
CREATE TABLE "HeadSuffix" (
    "headId" TEXT NOT NULL,
    "suffix" TEXT NOT NULL,

    CONSTRAINT "HeadSuffix_pkey" PRIMARY KEY ("suffix","headId")
);

-- CreateIndex
CREATE INDEX "CustomerSuffix_customerId_idx" ON "CustomerSuffix"("customerId");

-- CreateIndex
CREATE INDEX "HeadSuffix_headId_idx" ON "HeadSuffix"("headId");

-- CreateIndex
CREATE INDEX "AuditEntry_actorId_idx" ON "AuditEntry"("actorId");

-- CreateIndex
CREATE INDEX "AuditEntry_jobId_idx" ON "AuditEntry"("jobId");

-- CreateIndex
CREATE INDEX "AuditEntry_action_idx" ON "AuditEntry"("action");

-- CreateIndex
CREATE INDEX "AuditEntry_subjectId_idx" ON "AuditEntry"("subjectId");

-- CreateIndex
CREATE INDEX "AuditEntry_at_idx" ON "AuditEntry"("at");

-- CreateIndex
CREATE INDEX "CastingVariant_castingId_idx" ON "CastingVariant"("castingId");

-- CreateIndex
CREATE INDEX "CastingBolt_castingId_idx" ON "CastingBolt"("castingId");

-- CreateIndex
CREATE INDEX "Head_castingId_idx" ON "Head"("castingId");

-- CreateIndex
CREATE INDEX "TagAssignment_headId_idx" ON "TagAssignment"("headId");

-- CreateIndex
CREATE INDEX "TagAssignment_sortNumber_idx" ON "TagAssignment"("sortNumber");

-- CreateIndex
CREATE INDEX "Pair_castingId_idx" ON "Pair"("castingId");

-- CreateIndex
CREATE INDEX "Visit_comebackOfId_idx" ON "Visit"("comebackOfId");

-- CreateIndex
CREATE INDEX "Visit_rulesVersion_idx" ON "Visit"("rulesVersion");

-- CreateIndex
CREATE INDEX "Estimate_createdAt_idx" ON "Estimate"("createdAt");

-- CreateIndex
CREATE INDEX "PriceLine_visitId_idx" ON "PriceLine"("visitId");

-- CreateIndex
CREATE INDEX "PlanException_visitId_idx" ON "PlanException"("visitId");

-- CreateIndex
CREATE INDEX "PlanAcceptance_planId_idx" ON "PlanAcceptance"("planId");

-- CreateIndex
CREATE INDEX "ReadingSet_stepId_recordedAt_idx" ON "ReadingSet"("stepId", "recordedAt");

-- CreateIndex
CREATE INDEX "RouteStep_station_queue_idx" ON "RouteStep"("station", "queue");

-- CreateIndex
CREATE INDEX "RouteStep_queue_stepId_idx" ON "RouteStep"("queue", "stepId");

-- CreateIndex
CREATE INDEX "Finding_answer_reportedAt_idx" ON "Finding"("answer", "reportedAt");

-- CreateIndex
CREATE INDEX "Hold_decidedAt_openedAt_idx" ON "Hold"("decidedAt", "openedAt");

-- CreateIndex
CREATE INDEX "Waiver_at_idx" ON "Waiver"("at");

-- CreateIndex
CREATE INDEX "PartsWait_arrivedAt_openedAt_idx" ON "PartsWait"("arrivedAt", "openedAt");

-- CreateIndex
CREATE INDEX "Photo_holdId_idx" ON "Photo"("holdId");

-- CreateIndex
CREATE INDEX "Photo_orderId_idx" ON "Photo"("orderId");

-- CreateIndex
CREATE INDEX "OutsidePromise_orderId_idx" ON "OutsidePromise"("orderId");

-- CreateIndex
CREATE INDEX "OutsideOrderVisit_receivedAt_idx" ON "OutsideOrderVisit"("receivedAt");

-- CreateIndex
CREATE INDEX "SupplyOrder_promisedOn_idx" ON "SupplyOrder"("promisedOn");

-- CreateIndex
CREATE INDEX "SupplyLine_variantId_idx" ON "SupplyLine"("variantId");

-- AddForeignKey
ALTER TABLE "CustomerSuffix" ADD CONSTRAINT "CustomerSuffix_customerId_fkey" FOREIGN KEY ("customerId") REFERENCES "Customer"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "HeadSuffix" ADD CONSTRAINT "HeadSuffix_headId_fkey" FOREIGN KEY ("headId") REFERENCES "Head"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- Where each step stands in its station's queue
UPDATE "RouteStep" SET "queue" = CASE
    WHEN "visitId" IN (SELECT "visitId" FROM "VisitPlace" WHERE "whereabouts" IN ('released', 'handed over', 'returned as is', 'scrapped')) THEN ''
    WHEN "state" = 'started' AND "visitId" NOT IN (SELECT "visitId" FROM "VisitPlace" WHERE "whereabouts" IN ('on order', 'away', 'held')) THEN 'started'
    WHEN "state" <> 'started' AND jsonb_array_length("detail"::jsonb -> 'waitsFor') = 0 AND "visitId" NOT IN (SELECT "visitId" FROM "VisitPlace" WHERE "whereabouts" NOT IN ('expected', 'in house', 'finished')) THEN 'ready'
    ELSE 'coming'
  END
  WHERE "state" IN ('to do', 'ready', 'started', 'do again');

-- Every ending of what is searched
INSERT INTO "CustomerSuffix" ("customerId", "suffix")
  SELECT "customerId", substr("nameLower", "at", 32) FROM "CustomerContact", generate_series(1, 200) AS "place"("at")
    WHERE "blankedAt" IS NULL AND "at" <= length("nameLower")
  UNION
  SELECT "customerId", substr("phoneDigits", "at", 32) FROM "CustomerContact", generate_series(1, 200) AS "place"("at")
    WHERE "blankedAt" IS NULL AND "at" <= length("phoneDigits");
INSERT INTO "HeadSuffix" ("headId", "suffix")
  SELECT DISTINCT "id", substr("marksLower", "at", 32) FROM "Head", generate_series(1, 200) AS "place"("at")
    WHERE "at" <= length("marksLower");
