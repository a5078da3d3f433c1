-- AlterTable
ALTER TABLE "Job" ADD COLUMN "estimateId" TEXT;

-- CreateTable
CREATE TABLE "CastingOutline" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "castingId" TEXT NOT NULL,
    "form" TEXT NOT NULL,
    "points" TEXT NOT NULL,
    CONSTRAINT "CastingOutline_castingId_fkey" FOREIGN KEY ("castingId") REFERENCES "CastingRecord" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "PriceItem" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "stepId" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "unitMinor" INTEGER NOT NULL,
    "taxBasisPoints" INTEGER NOT NULL,
    "retiredAt" DATETIME,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "Estimate" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "number" TEXT NOT NULL,
    "forWhom" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    "question" TEXT NOT NULL,
    "answer" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL,
    "byId" TEXT NOT NULL
);

-- CreateIndex
CREATE UNIQUE INDEX "CastingOutline_castingId_form_key" ON "CastingOutline"("castingId", "form");

-- CreateIndex
CREATE INDEX "PriceItem_stepId_idx" ON "PriceItem"("stepId");

-- CreateIndex
CREATE UNIQUE INDEX "Estimate_number_key" ON "Estimate"("number");
