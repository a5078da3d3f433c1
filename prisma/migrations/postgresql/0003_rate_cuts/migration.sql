-- CreateTable
CREATE TABLE "ShopCut" (
    "visitId" TEXT NOT NULL,
    "castingId" TEXT NOT NULL,
    "form" TEXT NOT NULL,
    "seq" INTEGER NOT NULL,
    "shallowIn" DOUBLE PRECISION,
    "deepIn" DOUBLE PRECISION,
    "beforeCc" DOUBLE PRECISION,
    "uBeforeCc" DOUBLE PRECISION,
    "afterCc" DOUBLE PRECISION,
    "uAfterCc" DOUBLE PRECISION,
    "whyNot" TEXT NOT NULL,

    CONSTRAINT "ShopCut_pkey" PRIMARY KEY ("visitId")
);

-- CreateIndex
CREATE INDEX "ShopCut_castingId_form_seq_idx" ON "ShopCut"("castingId", "form", "seq");

-- AddForeignKey
ALTER TABLE "ShopCut" ADD CONSTRAINT "ShopCut_visitId_fkey" FOREIGN KEY ("visitId") REFERENCES "Visit"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
