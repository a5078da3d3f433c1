-- CreateTable
CREATE TABLE "Message" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "jobId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "findingId" TEXT,
    "way" TEXT NOT NULL,
    "toName" TEXT NOT NULL,
    "toAddress" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "body" TEXT NOT NULL,
    "linkId" TEXT,
    "byItself" BOOLEAN NOT NULL DEFAULT false,
    "at" DATETIME NOT NULL,
    "byId" TEXT NOT NULL,
    "blankedAt" DATETIME,
    CONSTRAINT "Message_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "OutboxMail" (
    "messageId" TEXT NOT NULL PRIMARY KEY,
    "state" TEXT NOT NULL,
    "mailId" TEXT NOT NULL,
    "sealedLink" TEXT NOT NULL DEFAULT '',
    "tries" INTEGER NOT NULL DEFAULT 0,
    "nextAt" DATETIME NOT NULL,
    "leaseUntil" DATETIME,
    "leaseBy" TEXT NOT NULL DEFAULT '',
    "fault" TEXT NOT NULL DEFAULT '',
    "answer" TEXT NOT NULL DEFAULT '',
    "settledAt" DATETIME,
    CONSTRAINT "OutboxMail_messageId_fkey" FOREIGN KEY ("messageId") REFERENCES "Message" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "MessageText" (
    "kind" TEXT NOT NULL PRIMARY KEY,
    "subject" TEXT NOT NULL,
    "body" TEXT NOT NULL,
    "byItself" BOOLEAN NOT NULL DEFAULT false,
    "version" INTEGER NOT NULL DEFAULT 1
);

-- CreateTable
CREATE TABLE "MailServer" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT DEFAULT 1,
    "host" TEXT NOT NULL,
    "port" INTEGER NOT NULL,
    "security" TEXT NOT NULL,
    "user" TEXT NOT NULL,
    "sealedPassword" TEXT NOT NULL,
    "fromAddress" TEXT NOT NULL,
    "replyTo" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1
);

-- CreateIndex
CREATE INDEX "Message_jobId_at_idx" ON "Message"("jobId", "at");

-- CreateIndex
CREATE UNIQUE INDEX "OutboxMail_mailId_key" ON "OutboxMail"("mailId");

-- CreateIndex
CREATE INDEX "OutboxMail_state_nextAt_idx" ON "OutboxMail"("state", "nextAt");
