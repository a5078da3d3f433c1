-- DropForeignKey
ALTER TABLE "CustomerSuffix" DROP CONSTRAINT "CustomerSuffix_customerId_fkey";

-- DropForeignKey
ALTER TABLE "HeadSuffix" DROP CONSTRAINT "HeadSuffix_headId_fkey";

-- AlterTable
ALTER TABLE "Customer" ADD COLUMN     "mergedIntoId" TEXT;

-- AlterTable
ALTER TABLE "CustomerContact" ADD COLUMN     "note" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "otherPhone" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "otherPhoneDigits" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "otherPhoneE164" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "phoneE164" TEXT NOT NULL DEFAULT '';

-- AlterTable
ALTER TABLE "Shop" ADD COLUMN     "country" TEXT NOT NULL DEFAULT '';

-- DropTable
DROP TABLE "CustomerSuffix";

-- DropTable
DROP TABLE "HeadSuffix";

-- CreateTable
CREATE TABLE "CustomerText" (
    "seq" SERIAL NOT NULL,
    "customerId" TEXT NOT NULL,
    "text" TEXT NOT NULL,

    CONSTRAINT "CustomerText_pkey" PRIMARY KEY ("seq")
);

-- CreateTable
CREATE TABLE "CustomerMerge" (
    "id" TEXT NOT NULL,
    "fromId" TEXT NOT NULL,
    "intoId" TEXT NOT NULL,
    "jobIds" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "byId" TEXT NOT NULL,
    "undoneAt" TIMESTAMP(3),
    "undoneById" TEXT,

    CONSTRAINT "CustomerMerge_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "HeadText" (
    "seq" SERIAL NOT NULL,
    "headId" TEXT NOT NULL,
    "text" TEXT NOT NULL,

    CONSTRAINT "HeadText_pkey" PRIMARY KEY ("seq")
);

-- CreateIndex
CREATE UNIQUE INDEX "CustomerText_customerId_key" ON "CustomerText"("customerId");

-- CreateIndex
CREATE INDEX "CustomerMerge_fromId_idx" ON "CustomerMerge"("fromId");

-- CreateIndex
CREATE INDEX "CustomerMerge_intoId_idx" ON "CustomerMerge"("intoId");

-- CreateIndex
CREATE UNIQUE INDEX "HeadText_headId_key" ON "HeadText"("headId");

-- CreateIndex
CREATE INDEX "Customer_mergedIntoId_idx" ON "Customer"("mergedIntoId");

-- CreateIndex
CREATE INDEX "CustomerContact_phoneE164_idx" ON "CustomerContact"("phoneE164");

-- CreateIndex
CREATE INDEX "CustomerContact_otherPhoneDigits_idx" ON "CustomerContact"("otherPhoneDigits");

-- CreateIndex
CREATE INDEX "CustomerContact_email_idx" ON "CustomerContact"("email");

-- AddForeignKey
ALTER TABLE "Customer" ADD CONSTRAINT "Customer_mergedIntoId_fkey" FOREIGN KEY ("mergedIntoId") REFERENCES "Customer"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CustomerText" ADD CONSTRAINT "CustomerText_customerId_fkey" FOREIGN KEY ("customerId") REFERENCES "Customer"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CustomerMerge" ADD CONSTRAINT "CustomerMerge_fromId_fkey" FOREIGN KEY ("fromId") REFERENCES "Customer"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CustomerMerge" ADD CONSTRAINT "CustomerMerge_intoId_fkey" FOREIGN KEY ("intoId") REFERENCES "Customer"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "HeadText" ADD CONSTRAINT "HeadText_headId_fkey" FOREIGN KEY ("headId") REFERENCES "Head"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
