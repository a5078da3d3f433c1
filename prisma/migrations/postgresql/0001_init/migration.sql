-- CreateTable
CREATE TABLE "Shop" (
    "id" INTEGER NOT NULL DEFAULT 1,
    "mode" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "address" TEXT NOT NULL,
    "phone" TEXT NOT NULL,
    "timeZone" TEXT NOT NULL,
    "locale" TEXT NOT NULL,
    "currency" TEXT NOT NULL,
    "currencyExponent" INTEGER NOT NULL,
    "paper" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Shop_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Settings" (
    "version" INTEGER NOT NULL,
    "values" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL,
    "byId" TEXT,

    CONSTRAINT "Settings_pkey" PRIMARY KEY ("version")
);

-- CreateTable
CREATE TABLE "Counter" (
    "name" TEXT NOT NULL,
    "value" INTEGER NOT NULL,

    CONSTRAINT "Counter_pkey" PRIMARY KEY ("name")
);

-- CreateTable
CREATE TABLE "Person" (
    "id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "signIn" TEXT NOT NULL,
    "passwordHash" TEXT NOT NULL,
    "roles" TEXT NOT NULL,
    "grants" TEXT NOT NULL,
    "retiredAt" TIMESTAMP(3),
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Person_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Session" (
    "id" TEXT NOT NULL,
    "personId" TEXT NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL,
    "lastSeenAt" TIMESTAMP(3) NOT NULL,
    "expiresAt" TIMESTAMP(3) NOT NULL,
    "endedAt" TIMESTAMP(3),
    "endReason" TEXT,

    CONSTRAINT "Session_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Operation" (
    "id" TEXT NOT NULL,
    "actorId" TEXT NOT NULL,
    "hash" TEXT NOT NULL,
    "result" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Operation_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "AuditEntry" (
    "seq" SERIAL NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "actorId" TEXT NOT NULL,
    "action" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "subjectId" TEXT NOT NULL,
    "jobId" TEXT,
    "visitId" TEXT,
    "changes" TEXT NOT NULL,
    "settingsVersion" INTEGER NOT NULL,
    "operationId" TEXT,

    CONSTRAINT "AuditEntry_pkey" PRIMARY KEY ("seq")
);

-- CreateTable
CREATE TABLE "File" (
    "sha256" TEXT NOT NULL,
    "size" INTEGER NOT NULL,
    "type" TEXT NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "File_pkey" PRIMARY KEY ("sha256")
);

-- CreateTable
CREATE TABLE "Customer" (
    "id" TEXT NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "Customer_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "CustomerContact" (
    "customerId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "nameLower" TEXT NOT NULL,
    "phone" TEXT NOT NULL,
    "phoneDigits" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "address" TEXT NOT NULL,
    "blankedAt" TIMESTAMP(3),

    CONSTRAINT "CustomerContact_pkey" PRIMARY KEY ("customerId")
);

-- CreateTable
CREATE TABLE "Vendor" (
    "id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "phone" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "address" TEXT NOT NULL,
    "services" TEXT NOT NULL,
    "retiredAt" TIMESTAMP(3),
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Vendor_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Instrument" (
    "id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "division" DOUBLE PRECISION,
    "lastCheckedOn" TEXT,
    "dueOn" TEXT,
    "retiredAt" TIMESTAMP(3),
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Instrument_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "CastingRecord" (
    "id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "nameLower" TEXT NOT NULL,
    "material" TEXT NOT NULL,
    "chamberCount" INTEGER NOT NULL,
    "chamberShape" TEXT NOT NULL,
    "deepEdge" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    "retiredAt" TIMESTAMP(3),
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "CastingRecord_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "CastingFigure" (
    "id" TEXT NOT NULL,
    "castingId" TEXT NOT NULL,
    "form" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "value" DOUBLE PRECISION NOT NULL,
    "text" TEXT NOT NULL,
    "unit" TEXT NOT NULL,

    CONSTRAINT "CastingFigure_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "CastingVariant" (
    "id" TEXT NOT NULL,
    "castingId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "nominalCc" DOUBLE PRECISION,
    "nominalText" TEXT NOT NULL,
    "supply" TEXT NOT NULL,
    "cutByMaker" BOOLEAN NOT NULL,
    "leadDays" INTEGER,
    "costMinor" INTEGER,
    "retiredAt" TIMESTAMP(3),

    CONSTRAINT "CastingVariant_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "CastingBolt" (
    "id" TEXT NOT NULL,
    "castingId" TEXT NOT NULL,
    "label" TEXT NOT NULL,
    "xIn" DOUBLE PRECISION,
    "yIn" DOUBLE PRECISION,
    "diameterIn" DOUBLE PRECISION,
    "boltIn" DOUBLE PRECISION,
    "lengthIn" DOUBLE PRECISION,
    "blind" BOOLEAN NOT NULL,
    "threadLeftIn" DOUBLE PRECISION,

    CONSTRAINT "CastingBolt_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Head" (
    "id" TEXT NOT NULL,
    "stamp" TEXT NOT NULL,
    "marks" TEXT NOT NULL,
    "marksLower" TEXT NOT NULL,
    "material" TEXT NOT NULL,
    "castingId" TEXT,
    "chamberForm" TEXT NOT NULL,
    "newThicknessIn" DOUBLE PRECISION,
    "newThicknessText" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Head_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "TagAssignment" (
    "id" TEXT NOT NULL,
    "headId" TEXT NOT NULL,
    "number" TEXT NOT NULL,
    "sortNumber" INTEGER NOT NULL,
    "activeNumber" TEXT,
    "from" TIMESTAMP(3) NOT NULL,
    "to" TIMESTAMP(3),

    CONSTRAINT "TagAssignment_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Job" (
    "id" TEXT NOT NULL,
    "number" TEXT NOT NULL,
    "customerId" TEXT NOT NULL,
    "preset" TEXT NOT NULL,
    "promiseOn" TEXT,
    "urgent" BOOLEAN NOT NULL DEFAULT false,
    "partsPlace" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    "classFlatOnly" BOOLEAN NOT NULL DEFAULT false,
    "classMinCc" DOUBLE PRECISION,
    "classMinText" TEXT NOT NULL DEFAULT '',
    "classMaxCutIn" DOUBLE PRECISION,
    "classMaxCutText" TEXT NOT NULL DEFAULT '',
    "finishAsked" TEXT NOT NULL DEFAULT '',
    "pricesOnLink" BOOLEAN NOT NULL DEFAULT false,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMP(3) NOT NULL,
    "byId" TEXT NOT NULL,

    CONSTRAINT "Job_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Engine" (
    "id" TEXT NOT NULL,
    "jobId" TEXT NOT NULL,
    "label" TEXT NOT NULL,
    "layout" TEXT NOT NULL,
    "camInHead" BOOLEAN,

    CONSTRAINT "Engine_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "EngineFigure" (
    "id" TEXT NOT NULL,
    "engineId" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "value" DOUBLE PRECISION NOT NULL,
    "text" TEXT NOT NULL,
    "unit" TEXT NOT NULL,

    CONSTRAINT "EngineFigure_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Pair" (
    "id" TEXT NOT NULL,
    "jobId" TEXT NOT NULL,
    "castingId" TEXT,

    CONSTRAINT "Pair_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Visit" (
    "id" TEXT NOT NULL,
    "jobId" TEXT NOT NULL,
    "headId" TEXT NOT NULL,
    "pairId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "source" TEXT NOT NULL,
    "used" BOOLEAN NOT NULL,
    "cameAssembled" BOOLEAN NOT NULL DEFAULT false,
    "overheated" BOOLEAN NOT NULL DEFAULT false,
    "side" TEXT NOT NULL,
    "cameWith" TEXT NOT NULL,
    "ownedBy" TEXT NOT NULL,
    "rackPlace" TEXT NOT NULL,
    "presentCc" DOUBLE PRECISION,
    "presentText" TEXT NOT NULL,
    "presentUnit" TEXT NOT NULL,
    "targetCc" DOUBLE PRECISION,
    "targetText" TEXT NOT NULL,
    "targetUnit" TEXT NOT NULL,
    "comebackOfId" TEXT,
    "comebackCause" TEXT NOT NULL DEFAULT '',
    "comebackPays" TEXT NOT NULL DEFAULT '',
    "scrappedAt" TIMESTAMP(3),
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Visit_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "OrderedLine" (
    "id" TEXT NOT NULL,
    "visitId" TEXT NOT NULL,
    "work" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    "findingId" TEXT,
    "createdAt" TIMESTAMP(3) NOT NULL,
    "endedAt" TIMESTAMP(3),

    CONSTRAINT "OrderedLine_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "PriceLine" (
    "id" TEXT NOT NULL,
    "jobId" TEXT NOT NULL,
    "visitId" TEXT,
    "findingId" TEXT,
    "text" TEXT NOT NULL,
    "quantity" INTEGER NOT NULL,
    "unitMinor" INTEGER NOT NULL,
    "taxBasisPoints" INTEGER NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL,
    "endedAt" TIMESTAMP(3),

    CONSTRAINT "PriceLine_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Payment" (
    "id" TEXT NOT NULL,
    "jobId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "minor" INTEGER NOT NULL,
    "how" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "byId" TEXT NOT NULL,

    CONSTRAINT "Payment_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "CallEntry" (
    "id" TEXT NOT NULL,
    "jobId" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "byId" TEXT NOT NULL,
    "text" TEXT NOT NULL,

    CONSTRAINT "CallEntry_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "PlanVersion" (
    "id" TEXT NOT NULL,
    "pairId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "inputs" TEXT NOT NULL,
    "results" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "settingsVersion" INTEGER NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL,
    "byId" TEXT NOT NULL,

    CONSTRAINT "PlanVersion_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "PlanException" (
    "id" TEXT NOT NULL,
    "planId" TEXT NOT NULL,
    "visitId" TEXT NOT NULL,
    "flatIn" DOUBLE PRECISION NOT NULL,
    "angleIn" DOUBLE PRECISION NOT NULL,
    "reason" TEXT NOT NULL,

    CONSTRAINT "PlanException_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "PlanAcceptance" (
    "id" TEXT NOT NULL,
    "planId" TEXT NOT NULL,
    "by" TEXT NOT NULL,
    "how" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "recordedById" TEXT NOT NULL,

    CONSTRAINT "PlanAcceptance_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "VisitEvent" (
    "seq" SERIAL NOT NULL,
    "visitId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "stepId" TEXT,
    "occurrence" TEXT NOT NULL,
    "orderId" TEXT,
    "note" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "byId" TEXT NOT NULL,
    "settingsVersion" INTEGER NOT NULL,

    CONSTRAINT "VisitEvent_pkey" PRIMARY KEY ("seq")
);

-- CreateTable
CREATE TABLE "ReadingSet" (
    "id" TEXT NOT NULL,
    "visitId" TEXT,
    "castingId" TEXT,
    "stepId" TEXT NOT NULL,
    "occurrence" TEXT NOT NULL,
    "orderId" TEXT,
    "eventSeq" INTEGER NOT NULL,
    "instrumentId" TEXT,
    "conditions" TEXT NOT NULL,
    "takenAt" TIMESTAMP(3) NOT NULL,
    "recordedAt" TIMESTAMP(3) NOT NULL,
    "byId" TEXT NOT NULL,

    CONSTRAINT "ReadingSet_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Reading" (
    "id" TEXT NOT NULL,
    "setId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "point" TEXT NOT NULL,
    "value" DOUBLE PRECISION,
    "text" TEXT NOT NULL,
    "unit" TEXT NOT NULL,
    "notTaken" TEXT,
    "correctsId" TEXT,
    "correction" TEXT,
    "reason" TEXT NOT NULL,

    CONSTRAINT "Reading_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "RouteStep" (
    "visitId" TEXT NOT NULL,
    "stepId" TEXT NOT NULL,
    "occurrence" TEXT NOT NULL,
    "orderKey" TEXT NOT NULL,
    "place" INTEGER NOT NULL,
    "label" TEXT NOT NULL,
    "station" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "detail" TEXT NOT NULL,

    CONSTRAINT "RouteStep_pkey" PRIMARY KEY ("visitId","stepId","occurrence","orderKey")
);

-- CreateTable
CREATE TABLE "VisitPlace" (
    "visitId" TEXT NOT NULL,
    "whereabouts" TEXT NOT NULL,
    "changedAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "VisitPlace_pkey" PRIMARY KEY ("visitId")
);

-- CreateTable
CREATE TABLE "Finding" (
    "id" TEXT NOT NULL,
    "visitId" TEXT NOT NULL,
    "stepId" TEXT,
    "what" TEXT NOT NULL,
    "priceMinor" INTEGER,
    "addsWork" TEXT NOT NULL,
    "reportedAt" TIMESTAMP(3) NOT NULL,
    "reportedById" TEXT NOT NULL,
    "askedAt" TIMESTAMP(3),
    "askedHow" TEXT NOT NULL,
    "askedById" TEXT,
    "answer" TEXT,
    "answeredAt" TIMESTAMP(3),
    "answeredBy" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "Finding_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Hold" (
    "id" TEXT NOT NULL,
    "visitId" TEXT NOT NULL,
    "stepId" TEXT,
    "reason" TEXT NOT NULL,
    "openedAt" TIMESTAMP(3) NOT NULL,
    "openedById" TEXT NOT NULL,
    "decision" TEXT,
    "decisionNote" TEXT NOT NULL,
    "customerYes" TEXT NOT NULL,
    "decidedAt" TIMESTAMP(3),
    "decidedById" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "Hold_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Waiver" (
    "id" TEXT NOT NULL,
    "visitId" TEXT NOT NULL,
    "stepId" TEXT NOT NULL,
    "occurrence" TEXT NOT NULL,
    "orderId" TEXT,
    "gap" TEXT NOT NULL,
    "what" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "touchesCustomer" BOOLEAN NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "byId" TEXT NOT NULL,

    CONSTRAINT "Waiver_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "PartsWait" (
    "id" TEXT NOT NULL,
    "visitId" TEXT NOT NULL,
    "stepId" TEXT NOT NULL,
    "occurrence" TEXT NOT NULL,
    "what" TEXT NOT NULL,
    "fromWhom" TEXT NOT NULL,
    "promisedOn" TEXT,
    "openedAt" TIMESTAMP(3) NOT NULL,
    "openedById" TEXT NOT NULL,
    "arrivedAt" TIMESTAMP(3),
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "PartsWait_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Photo" (
    "id" TEXT NOT NULL,
    "visitId" TEXT NOT NULL,
    "stepId" TEXT NOT NULL,
    "sha256" TEXT NOT NULL,
    "caption" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "byId" TEXT NOT NULL,

    CONSTRAINT "Photo_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "OutsideOrder" (
    "id" TEXT NOT NULL,
    "number" TEXT NOT NULL,
    "vendorId" TEXT NOT NULL,
    "instructions" TEXT NOT NULL,
    "scope" TEXT NOT NULL,
    "finishesToSize" BOOLEAN NOT NULL,
    "freight" TEXT NOT NULL,
    "tracking" TEXT NOT NULL,
    "costMinor" INTEGER,
    "createdAt" TIMESTAMP(3) NOT NULL,
    "byId" TEXT NOT NULL,
    "sentAt" TIMESTAMP(3),
    "acceptedAt" TIMESTAMP(3),
    "promisedOn" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "OutsideOrder_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "OutsidePromise" (
    "id" TEXT NOT NULL,
    "orderId" TEXT NOT NULL,
    "promisedOn" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "byId" TEXT NOT NULL,

    CONSTRAINT "OutsidePromise_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "OutsideOrderVisit" (
    "id" TEXT NOT NULL,
    "orderId" TEXT NOT NULL,
    "visitId" TEXT NOT NULL,
    "angleIn" DOUBLE PRECISION NOT NULL,
    "flatIn" DOUBLE PRECISION NOT NULL,
    "comesWith" TEXT NOT NULL,
    "receivedAt" TIMESTAMP(3),
    "receivedById" TEXT,
    "confirmed" TEXT NOT NULL,
    "seatsIn" BOOLEAN NOT NULL DEFAULT true,
    "marksTyped" TEXT NOT NULL,
    "marksRead" TEXT NOT NULL,
    "rejectedAt" TIMESTAMP(3),
    "redoCost" TEXT NOT NULL,

    CONSTRAINT "OutsideOrderVisit_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "SupplyOrder" (
    "id" TEXT NOT NULL,
    "number" TEXT NOT NULL,
    "vendorId" TEXT NOT NULL,
    "jobId" TEXT,
    "createdAt" TIMESTAMP(3) NOT NULL,
    "byId" TEXT NOT NULL,
    "promisedOn" TEXT,
    "arrivedAt" TIMESTAMP(3),
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "SupplyOrder_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "SupplyLine" (
    "id" TEXT NOT NULL,
    "orderId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "what" TEXT NOT NULL,
    "variantId" TEXT,
    "visitId" TEXT,
    "quantity" INTEGER NOT NULL,
    "arrived" INTEGER NOT NULL,
    "costMinor" INTEGER,

    CONSTRAINT "SupplyLine_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Release" (
    "id" TEXT NOT NULL,
    "visitId" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "facts" TEXT NOT NULL,
    "pdfSha256" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "byId" TEXT NOT NULL,
    "reason" TEXT NOT NULL,

    CONSTRAINT "Release_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ReturnedAsIs" (
    "visitId" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "notDone" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "byId" TEXT NOT NULL,

    CONSTRAINT "ReturnedAsIs_pkey" PRIMARY KEY ("visitId")
);

-- CreateTable
CREATE TABLE "HandOver" (
    "visitId" TEXT NOT NULL,
    "takenBy" TEXT NOT NULL,
    "side" TEXT NOT NULL,
    "partsBack" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "byId" TEXT NOT NULL,

    CONSTRAINT "HandOver_pkey" PRIMARY KEY ("visitId")
);

-- CreateTable
CREATE TABLE "CustomerLink" (
    "id" TEXT NOT NULL,
    "jobId" TEXT NOT NULL,
    "tokenHash" TEXT NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL,
    "expiresAt" TIMESTAMP(3) NOT NULL,
    "revokedAt" TIMESTAMP(3),
    "byId" TEXT NOT NULL,

    CONSTRAINT "CustomerLink_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "Person_signIn_key" ON "Person"("signIn");

-- CreateIndex
CREATE INDEX "Session_personId_idx" ON "Session"("personId");

-- CreateIndex
CREATE INDEX "AuditEntry_subject_subjectId_idx" ON "AuditEntry"("subject", "subjectId");

-- CreateIndex
CREATE INDEX "AuditEntry_visitId_idx" ON "AuditEntry"("visitId");

-- CreateIndex
CREATE INDEX "CustomerContact_nameLower_idx" ON "CustomerContact"("nameLower");

-- CreateIndex
CREATE INDEX "CustomerContact_phoneDigits_idx" ON "CustomerContact"("phoneDigits");

-- CreateIndex
CREATE UNIQUE INDEX "CastingFigure_castingId_form_key_key" ON "CastingFigure"("castingId", "form", "key");

-- CreateIndex
CREATE INDEX "Head_marksLower_idx" ON "Head"("marksLower");

-- CreateIndex
CREATE UNIQUE INDEX "TagAssignment_activeNumber_key" ON "TagAssignment"("activeNumber");

-- CreateIndex
CREATE INDEX "TagAssignment_number_idx" ON "TagAssignment"("number");

-- CreateIndex
CREATE UNIQUE INDEX "Job_number_key" ON "Job"("number");

-- CreateIndex
CREATE INDEX "Job_customerId_idx" ON "Job"("customerId");

-- CreateIndex
CREATE UNIQUE INDEX "Engine_jobId_key" ON "Engine"("jobId");

-- CreateIndex
CREATE UNIQUE INDEX "EngineFigure_engineId_key_key" ON "EngineFigure"("engineId", "key");

-- CreateIndex
CREATE INDEX "Pair_jobId_idx" ON "Pair"("jobId");

-- CreateIndex
CREATE INDEX "Visit_jobId_idx" ON "Visit"("jobId");

-- CreateIndex
CREATE INDEX "Visit_headId_idx" ON "Visit"("headId");

-- CreateIndex
CREATE INDEX "Visit_pairId_idx" ON "Visit"("pairId");

-- CreateIndex
CREATE INDEX "OrderedLine_visitId_idx" ON "OrderedLine"("visitId");

-- CreateIndex
CREATE INDEX "PriceLine_jobId_idx" ON "PriceLine"("jobId");

-- CreateIndex
CREATE INDEX "Payment_jobId_idx" ON "Payment"("jobId");

-- CreateIndex
CREATE INDEX "CallEntry_jobId_idx" ON "CallEntry"("jobId");

-- CreateIndex
CREATE UNIQUE INDEX "PlanVersion_pairId_number_key" ON "PlanVersion"("pairId", "number");

-- CreateIndex
CREATE UNIQUE INDEX "PlanException_planId_visitId_key" ON "PlanException"("planId", "visitId");

-- CreateIndex
CREATE INDEX "VisitEvent_visitId_idx" ON "VisitEvent"("visitId");

-- CreateIndex
CREATE INDEX "ReadingSet_visitId_idx" ON "ReadingSet"("visitId");

-- CreateIndex
CREATE INDEX "ReadingSet_castingId_idx" ON "ReadingSet"("castingId");

-- CreateIndex
CREATE INDEX "Reading_setId_idx" ON "Reading"("setId");

-- CreateIndex
CREATE INDEX "Reading_correctsId_idx" ON "Reading"("correctsId");

-- CreateIndex
CREATE INDEX "RouteStep_station_state_idx" ON "RouteStep"("station", "state");

-- CreateIndex
CREATE INDEX "VisitPlace_whereabouts_idx" ON "VisitPlace"("whereabouts");

-- CreateIndex
CREATE INDEX "Finding_visitId_idx" ON "Finding"("visitId");

-- CreateIndex
CREATE INDEX "Hold_visitId_idx" ON "Hold"("visitId");

-- CreateIndex
CREATE INDEX "Waiver_visitId_idx" ON "Waiver"("visitId");

-- CreateIndex
CREATE INDEX "PartsWait_visitId_idx" ON "PartsWait"("visitId");

-- CreateIndex
CREATE INDEX "Photo_visitId_idx" ON "Photo"("visitId");

-- CreateIndex
CREATE UNIQUE INDEX "OutsideOrder_number_key" ON "OutsideOrder"("number");

-- CreateIndex
CREATE INDEX "OutsideOrder_vendorId_idx" ON "OutsideOrder"("vendorId");

-- CreateIndex
CREATE INDEX "OutsideOrderVisit_visitId_idx" ON "OutsideOrderVisit"("visitId");

-- CreateIndex
CREATE UNIQUE INDEX "OutsideOrderVisit_orderId_visitId_key" ON "OutsideOrderVisit"("orderId", "visitId");

-- CreateIndex
CREATE UNIQUE INDEX "SupplyOrder_number_key" ON "SupplyOrder"("number");

-- CreateIndex
CREATE INDEX "SupplyLine_orderId_idx" ON "SupplyLine"("orderId");

-- CreateIndex
CREATE UNIQUE INDEX "Release_visitId_revision_key" ON "Release"("visitId", "revision");

-- CreateIndex
CREATE UNIQUE INDEX "CustomerLink_tokenHash_key" ON "CustomerLink"("tokenHash");

-- CreateIndex
CREATE INDEX "CustomerLink_jobId_idx" ON "CustomerLink"("jobId");

-- AddForeignKey
ALTER TABLE "Session" ADD CONSTRAINT "Session_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CustomerContact" ADD CONSTRAINT "CustomerContact_customerId_fkey" FOREIGN KEY ("customerId") REFERENCES "Customer"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CastingFigure" ADD CONSTRAINT "CastingFigure_castingId_fkey" FOREIGN KEY ("castingId") REFERENCES "CastingRecord"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CastingVariant" ADD CONSTRAINT "CastingVariant_castingId_fkey" FOREIGN KEY ("castingId") REFERENCES "CastingRecord"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CastingBolt" ADD CONSTRAINT "CastingBolt_castingId_fkey" FOREIGN KEY ("castingId") REFERENCES "CastingRecord"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Head" ADD CONSTRAINT "Head_castingId_fkey" FOREIGN KEY ("castingId") REFERENCES "CastingRecord"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "TagAssignment" ADD CONSTRAINT "TagAssignment_headId_fkey" FOREIGN KEY ("headId") REFERENCES "Head"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Job" ADD CONSTRAINT "Job_customerId_fkey" FOREIGN KEY ("customerId") REFERENCES "Customer"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Engine" ADD CONSTRAINT "Engine_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "EngineFigure" ADD CONSTRAINT "EngineFigure_engineId_fkey" FOREIGN KEY ("engineId") REFERENCES "Engine"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Pair" ADD CONSTRAINT "Pair_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Visit" ADD CONSTRAINT "Visit_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Visit" ADD CONSTRAINT "Visit_headId_fkey" FOREIGN KEY ("headId") REFERENCES "Head"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Visit" ADD CONSTRAINT "Visit_pairId_fkey" FOREIGN KEY ("pairId") REFERENCES "Pair"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Visit" ADD CONSTRAINT "Visit_comebackOfId_fkey" FOREIGN KEY ("comebackOfId") REFERENCES "Visit"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "OrderedLine" ADD CONSTRAINT "OrderedLine_visitId_fkey" FOREIGN KEY ("visitId") REFERENCES "Visit"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PriceLine" ADD CONSTRAINT "PriceLine_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Payment" ADD CONSTRAINT "Payment_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CallEntry" ADD CONSTRAINT "CallEntry_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PlanVersion" ADD CONSTRAINT "PlanVersion_pairId_fkey" FOREIGN KEY ("pairId") REFERENCES "Pair"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PlanException" ADD CONSTRAINT "PlanException_planId_fkey" FOREIGN KEY ("planId") REFERENCES "PlanVersion"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PlanException" ADD CONSTRAINT "PlanException_visitId_fkey" FOREIGN KEY ("visitId") REFERENCES "Visit"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PlanAcceptance" ADD CONSTRAINT "PlanAcceptance_planId_fkey" FOREIGN KEY ("planId") REFERENCES "PlanVersion"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "VisitEvent" ADD CONSTRAINT "VisitEvent_visitId_fkey" FOREIGN KEY ("visitId") REFERENCES "Visit"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ReadingSet" ADD CONSTRAINT "ReadingSet_visitId_fkey" FOREIGN KEY ("visitId") REFERENCES "Visit"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Reading" ADD CONSTRAINT "Reading_setId_fkey" FOREIGN KEY ("setId") REFERENCES "ReadingSet"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Reading" ADD CONSTRAINT "Reading_correctsId_fkey" FOREIGN KEY ("correctsId") REFERENCES "Reading"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "RouteStep" ADD CONSTRAINT "RouteStep_visitId_fkey" FOREIGN KEY ("visitId") REFERENCES "Visit"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "VisitPlace" ADD CONSTRAINT "VisitPlace_visitId_fkey" FOREIGN KEY ("visitId") REFERENCES "Visit"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Finding" ADD CONSTRAINT "Finding_visitId_fkey" FOREIGN KEY ("visitId") REFERENCES "Visit"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Hold" ADD CONSTRAINT "Hold_visitId_fkey" FOREIGN KEY ("visitId") REFERENCES "Visit"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Waiver" ADD CONSTRAINT "Waiver_visitId_fkey" FOREIGN KEY ("visitId") REFERENCES "Visit"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PartsWait" ADD CONSTRAINT "PartsWait_visitId_fkey" FOREIGN KEY ("visitId") REFERENCES "Visit"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Photo" ADD CONSTRAINT "Photo_visitId_fkey" FOREIGN KEY ("visitId") REFERENCES "Visit"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "OutsideOrder" ADD CONSTRAINT "OutsideOrder_vendorId_fkey" FOREIGN KEY ("vendorId") REFERENCES "Vendor"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "OutsidePromise" ADD CONSTRAINT "OutsidePromise_orderId_fkey" FOREIGN KEY ("orderId") REFERENCES "OutsideOrder"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "OutsideOrderVisit" ADD CONSTRAINT "OutsideOrderVisit_orderId_fkey" FOREIGN KEY ("orderId") REFERENCES "OutsideOrder"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "OutsideOrderVisit" ADD CONSTRAINT "OutsideOrderVisit_visitId_fkey" FOREIGN KEY ("visitId") REFERENCES "Visit"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SupplyLine" ADD CONSTRAINT "SupplyLine_orderId_fkey" FOREIGN KEY ("orderId") REFERENCES "SupplyOrder"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Release" ADD CONSTRAINT "Release_visitId_fkey" FOREIGN KEY ("visitId") REFERENCES "Visit"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ReturnedAsIs" ADD CONSTRAINT "ReturnedAsIs_visitId_fkey" FOREIGN KEY ("visitId") REFERENCES "Visit"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "HandOver" ADD CONSTRAINT "HandOver_visitId_fkey" FOREIGN KEY ("visitId") REFERENCES "Visit"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CustomerLink" ADD CONSTRAINT "CustomerLink_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
