-- AlterTable
ALTER TABLE "Job" ADD COLUMN     "estimateId" TEXT;

-- CreateTable
CREATE TABLE "CastingOutline" (
    "id" TEXT NOT NULL,
    "castingId" TEXT NOT NULL,
    "form" TEXT NOT NULL,
    "points" TEXT NOT NULL,

    CONSTRAINT "CastingOutline_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "PriceItem" (
    "id" TEXT NOT NULL,
    "stepId" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "unitMinor" INTEGER NOT NULL,
    "taxBasisPoints" INTEGER NOT NULL,
    "retiredAt" TIMESTAMP(3),
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "PriceItem_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Estimate" (
    "id" TEXT NOT NULL,
    "number" TEXT NOT NULL,
    "forWhom" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    "question" TEXT NOT NULL,
    "answer" TEXT NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL,
    "byId" TEXT NOT NULL,

    CONSTRAINT "Estimate_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "CastingOutline_castingId_form_key" ON "CastingOutline"("castingId", "form");

-- CreateIndex
CREATE INDEX "PriceItem_stepId_idx" ON "PriceItem"("stepId");

-- CreateIndex
CREATE UNIQUE INDEX "Estimate_number_key" ON "Estimate"("number");

-- AddForeignKey
ALTER TABLE "CastingOutline" ADD CONSTRAINT "CastingOutline_castingId_fkey" FOREIGN KEY ("castingId") REFERENCES "CastingRecord"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
