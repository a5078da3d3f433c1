-- CreateTable
CREATE TABLE "StepTime" (
    "visitId" TEXT NOT NULL,
    "stepId" TEXT NOT NULL,
    "occurrence" TEXT NOT NULL,
    "orderKey" TEXT NOT NULL,
    "station" TEXT NOT NULL,
    "readyAt" TIMESTAMP(3) NOT NULL,
    "freeAt" TIMESTAMP(3),
    "doneAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "StepTime_pkey" PRIMARY KEY ("visitId","stepId","occurrence","orderKey")
);

-- CreateIndex
CREATE INDEX "StepTime_stepId_doneAt_idx" ON "StepTime"("stepId", "doneAt");

-- CreateIndex
CREATE INDEX "StepTime_station_doneAt_idx" ON "StepTime"("station", "doneAt");

-- What was done before counts as well: steps that stand as done, sendings and releases.
INSERT INTO "StepTime" ("visitId", "stepId", "occurrence", "orderKey", "station", "readyAt", "freeAt", "doneAt")
SELECT e."visitId", r."stepId", r."occurrence", r."orderKey", r."station",
  COALESCE((SELECT MAX(p."at") FROM "VisitEvent" p WHERE p."visitId" = e."visitId" AND p."seq" < e."seq"
    AND p."kind" IN ('tick', 'sent', 'received', 'release')), v."createdAt"), NULL, e."at"
FROM "RouteStep" r
JOIN "Visit" v ON v."id" = r."visitId"
JOIN "VisitEvent" e ON e."seq" = (SELECT MAX(l."seq") FROM "VisitEvent" l WHERE l."visitId" = r."visitId"
  AND l."kind" = 'tick' AND l."stepId" = r."stepId" AND l."occurrence" = r."occurrence"
  AND COALESCE(l."orderId", '') = r."orderKey")
WHERE r."state" = 'done';

INSERT INTO "StepTime" ("visitId", "stepId", "occurrence", "orderKey", "station", "readyAt", "freeAt", "doneAt")
SELECT e."visitId", CASE e."kind" WHEN 'sent' THEN 'send' ELSE 'release' END, '', COALESCE(e."orderId", ''), '',
  COALESCE((SELECT MAX(p."at") FROM "VisitEvent" p WHERE p."visitId" = e."visitId" AND p."seq" < e."seq"
    AND p."kind" IN ('tick', 'sent', 'received', 'release')), v."createdAt"), NULL, e."at"
FROM "VisitEvent" e
JOIN "Visit" v ON v."id" = e."visitId"
WHERE e."kind" IN ('sent', 'release') AND NOT EXISTS (SELECT 1 FROM "VisitEvent" l WHERE l."visitId" = e."visitId"
  AND l."kind" = e."kind" AND COALESCE(l."orderId", '') = COALESCE(e."orderId", '') AND l."seq" > e."seq");
