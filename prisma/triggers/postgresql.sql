-- Facts that are only ever added to. Applied again after every migration.

CREATE OR REPLACE FUNCTION brasstag_append_only() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION '% is append-only', TG_TABLE_NAME USING ERRCODE = 'integrity_constraint_violation';
END;
$$;

CREATE OR REPLACE TRIGGER "AuditEntry_no_update" BEFORE UPDATE ON "AuditEntry"
  FOR EACH ROW EXECUTE FUNCTION brasstag_append_only();
CREATE OR REPLACE TRIGGER "AuditEntry_no_delete" BEFORE DELETE ON "AuditEntry"
  FOR EACH ROW EXECUTE FUNCTION brasstag_append_only();
CREATE OR REPLACE TRIGGER "AuditEntry_no_truncate" BEFORE TRUNCATE ON "AuditEntry"
  FOR EACH STATEMENT EXECUTE FUNCTION brasstag_append_only();

CREATE OR REPLACE TRIGGER "VisitEvent_no_update" BEFORE UPDATE ON "VisitEvent"
  FOR EACH ROW EXECUTE FUNCTION brasstag_append_only();
CREATE OR REPLACE TRIGGER "VisitEvent_no_delete" BEFORE DELETE ON "VisitEvent"
  FOR EACH ROW EXECUTE FUNCTION brasstag_append_only();
CREATE OR REPLACE TRIGGER "VisitEvent_no_truncate" BEFORE TRUNCATE ON "VisitEvent"
  FOR EACH STATEMENT EXECUTE FUNCTION brasstag_append_only();

CREATE OR REPLACE TRIGGER "ReadingSet_no_update" BEFORE UPDATE ON "ReadingSet"
  FOR EACH ROW EXECUTE FUNCTION brasstag_append_only();
CREATE OR REPLACE TRIGGER "ReadingSet_no_delete" BEFORE DELETE ON "ReadingSet"
  FOR EACH ROW EXECUTE FUNCTION brasstag_append_only();
CREATE OR REPLACE TRIGGER "ReadingSet_no_truncate" BEFORE TRUNCATE ON "ReadingSet"
  FOR EACH STATEMENT EXECUTE FUNCTION brasstag_append_only();

CREATE OR REPLACE TRIGGER "Reading_no_update" BEFORE UPDATE ON "Reading"
  FOR EACH ROW EXECUTE FUNCTION brasstag_append_only();
CREATE OR REPLACE TRIGGER "Reading_no_delete" BEFORE DELETE ON "Reading"
  FOR EACH ROW EXECUTE FUNCTION brasstag_append_only();
CREATE OR REPLACE TRIGGER "Reading_no_truncate" BEFORE TRUNCATE ON "Reading"
  FOR EACH STATEMENT EXECUTE FUNCTION brasstag_append_only();

CREATE OR REPLACE TRIGGER "Waiver_no_update" BEFORE UPDATE ON "Waiver"
  FOR EACH ROW EXECUTE FUNCTION brasstag_append_only();
CREATE OR REPLACE TRIGGER "Waiver_no_delete" BEFORE DELETE ON "Waiver"
  FOR EACH ROW EXECUTE FUNCTION brasstag_append_only();
CREATE OR REPLACE TRIGGER "Waiver_no_truncate" BEFORE TRUNCATE ON "Waiver"
  FOR EACH STATEMENT EXECUTE FUNCTION brasstag_append_only();

CREATE OR REPLACE TRIGGER "PlanVersion_no_update" BEFORE UPDATE ON "PlanVersion"
  FOR EACH ROW EXECUTE FUNCTION brasstag_append_only();
CREATE OR REPLACE TRIGGER "PlanVersion_no_delete" BEFORE DELETE ON "PlanVersion"
  FOR EACH ROW EXECUTE FUNCTION brasstag_append_only();
CREATE OR REPLACE TRIGGER "PlanVersion_no_truncate" BEFORE TRUNCATE ON "PlanVersion"
  FOR EACH STATEMENT EXECUTE FUNCTION brasstag_append_only();

CREATE OR REPLACE TRIGGER "Estimate_no_update" BEFORE UPDATE ON "Estimate"
  FOR EACH ROW EXECUTE FUNCTION brasstag_append_only();
CREATE OR REPLACE TRIGGER "Estimate_no_delete" BEFORE DELETE ON "Estimate"
  FOR EACH ROW EXECUTE FUNCTION brasstag_append_only();
CREATE OR REPLACE TRIGGER "Estimate_no_truncate" BEFORE TRUNCATE ON "Estimate"
  FOR EACH STATEMENT EXECUTE FUNCTION brasstag_append_only();

CREATE OR REPLACE TRIGGER "PlanAcceptance_no_update" BEFORE UPDATE ON "PlanAcceptance"
  FOR EACH ROW EXECUTE FUNCTION brasstag_append_only();
CREATE OR REPLACE TRIGGER "PlanAcceptance_no_delete" BEFORE DELETE ON "PlanAcceptance"
  FOR EACH ROW EXECUTE FUNCTION brasstag_append_only();
CREATE OR REPLACE TRIGGER "PlanAcceptance_no_truncate" BEFORE TRUNCATE ON "PlanAcceptance"
  FOR EACH STATEMENT EXECUTE FUNCTION brasstag_append_only();

CREATE OR REPLACE TRIGGER "Release_no_update" BEFORE UPDATE ON "Release"
  FOR EACH ROW EXECUTE FUNCTION brasstag_append_only();
CREATE OR REPLACE TRIGGER "Release_no_delete" BEFORE DELETE ON "Release"
  FOR EACH ROW EXECUTE FUNCTION brasstag_append_only();
CREATE OR REPLACE TRIGGER "Release_no_truncate" BEFORE TRUNCATE ON "Release"
  FOR EACH STATEMENT EXECUTE FUNCTION brasstag_append_only();

CREATE OR REPLACE TRIGGER "OutsidePromise_no_update" BEFORE UPDATE ON "OutsidePromise"
  FOR EACH ROW EXECUTE FUNCTION brasstag_append_only();
CREATE OR REPLACE TRIGGER "OutsidePromise_no_delete" BEFORE DELETE ON "OutsidePromise"
  FOR EACH ROW EXECUTE FUNCTION brasstag_append_only();
CREATE OR REPLACE TRIGGER "OutsidePromise_no_truncate" BEFORE TRUNCATE ON "OutsidePromise"
  FOR EACH STATEMENT EXECUTE FUNCTION brasstag_append_only();

CREATE OR REPLACE TRIGGER "SupplyPromise_no_update" BEFORE UPDATE ON "SupplyPromise"
  FOR EACH ROW EXECUTE FUNCTION brasstag_append_only();
CREATE OR REPLACE TRIGGER "SupplyPromise_no_delete" BEFORE DELETE ON "SupplyPromise"
  FOR EACH ROW EXECUTE FUNCTION brasstag_append_only();
CREATE OR REPLACE TRIGGER "SupplyPromise_no_truncate" BEFORE TRUNCATE ON "SupplyPromise"
  FOR EACH STATEMENT EXECUTE FUNCTION brasstag_append_only();

CREATE OR REPLACE TRIGGER "Payment_no_update" BEFORE UPDATE ON "Payment"
  FOR EACH ROW EXECUTE FUNCTION brasstag_append_only();
CREATE OR REPLACE TRIGGER "Payment_no_delete" BEFORE DELETE ON "Payment"
  FOR EACH ROW EXECUTE FUNCTION brasstag_append_only();
CREATE OR REPLACE TRIGGER "Payment_no_truncate" BEFORE TRUNCATE ON "Payment"
  FOR EACH STATEMENT EXECUTE FUNCTION brasstag_append_only();

CREATE OR REPLACE TRIGGER "CallEntry_no_update" BEFORE UPDATE ON "CallEntry"
  FOR EACH ROW EXECUTE FUNCTION brasstag_append_only();
CREATE OR REPLACE TRIGGER "CallEntry_no_delete" BEFORE DELETE ON "CallEntry"
  FOR EACH ROW EXECUTE FUNCTION brasstag_append_only();
CREATE OR REPLACE TRIGGER "CallEntry_no_truncate" BEFORE TRUNCATE ON "CallEntry"
  FOR EACH STATEMENT EXECUTE FUNCTION brasstag_append_only();

CREATE OR REPLACE TRIGGER "Operation_no_update" BEFORE UPDATE ON "Operation"
  FOR EACH ROW EXECUTE FUNCTION brasstag_append_only();
CREATE OR REPLACE TRIGGER "Operation_no_delete" BEFORE DELETE ON "Operation"
  FOR EACH ROW EXECUTE FUNCTION brasstag_append_only();
CREATE OR REPLACE TRIGGER "Operation_no_truncate" BEFORE TRUNCATE ON "Operation"
  FOR EACH STATEMENT EXECUTE FUNCTION brasstag_append_only();
