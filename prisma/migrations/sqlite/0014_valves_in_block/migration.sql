-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Engine" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "jobId" TEXT NOT NULL,
    "label" TEXT NOT NULL,
    "layout" TEXT NOT NULL,
    "camInHead" BOOLEAN,
    "valvesInBlock" BOOLEAN NOT NULL DEFAULT false,
    CONSTRAINT "Engine_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_Engine" ("camInHead", "id", "jobId", "label", "layout") SELECT "camInHead", "id", "jobId", "label", "layout" FROM "Engine";
DROP TABLE "Engine";
ALTER TABLE "new_Engine" RENAME TO "Engine";
CREATE UNIQUE INDEX "Engine_jobId_key" ON "Engine"("jobId");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;
