-- Rates had hundredths of a per cent. They have millionths now, a hundred times as many: 8.25 % was 825 and is 82500.
ALTER TABLE "Finding" RENAME COLUMN "taxBasisPoints" TO "taxMillionths";
ALTER TABLE "PriceItem" RENAME COLUMN "taxBasisPoints" TO "taxMillionths";
ALTER TABLE "PriceLine" RENAME COLUMN "taxBasisPoints" TO "taxMillionths";
ALTER TABLE "TaxRate" RENAME COLUMN "basisPoints" TO "rateMillionths";

UPDATE "Finding" SET "taxMillionths" = "taxMillionths" * 100 WHERE "taxMillionths" <> 0;
UPDATE "PriceItem" SET "taxMillionths" = "taxMillionths" * 100 WHERE "taxMillionths" <> 0;
UPDATE "PriceLine" SET "taxMillionths" = "taxMillionths" * 100 WHERE "taxMillionths" <> 0;
UPDATE "TaxRate" SET "rateMillionths" = "rateMillionths" * 100 WHERE "rateMillionths" <> 0;
