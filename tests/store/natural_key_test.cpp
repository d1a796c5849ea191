#include "store/engines.hpp"
#include "store/examples.hpp"

namespace sparewell::store::test::natural_key_test {
namespace {

/// `same` bears the natural key of `stored`, `other` does not.
template <class Record>
void check_key(UnitOfWork& work, const Record& stored, const Record& same, const Record& other) {
  CAPTURE(typeid(Record).name());
  const auto id = work.put(stored);
  CHECK(error_of([&] { work.put(same); }) == StoreError::constraint);
  CHECK_NOTHROW(work.put(other));
  CHECK(error_of([&] { work.put_instead(id, other); }) == StoreError::constraint);
}

template <class Record, class Change>
Record with(Record record, Change change) {
  change(record);
  return record;
}

}  // namespace

TEST_CASE_TEMPLATE("a second record with the same natural key is refused", Engine,
                   SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  const auto work = store->begin_write(anna);
  add_referred(*work);
  check_key(*work, full<Supplier>(), full_but_changed<Supplier>(), Supplier{.name = {"B"}});
  check_key(*work, full<Item>(), full_but_changed<Item>(), Item{.code = {"B"}});
  check_key(*work, full<Patient>(), full_but_changed<Patient>(), Patient{.ref = {"B"}});
  check_key(*work, full<Prosthesis>(), full_but_changed<Prosthesis>(),
            with(full<Prosthesis>(), [](auto& p) { p.side = Side::left; }));
  check_key(*work, full<Usage>(), full_but_changed<Usage>(),
            with(full<Usage>(), [](auto& u) { u.from_date += days{1}; }));
  check_key(*work, full<Sensitivity>(), full_but_changed<Sensitivity>(),
            with(full<Sensitivity>(), [](auto& s) { s.noted_on.reset(); }));
  check_key(*work, full<SensitivityDecision>(), full_but_changed<SensitivityDecision>(),
            bare<SensitivityDecision>());
  check_key(*work, full<SubstanceRow>(), full_but_changed<SubstanceRow>(), bare<SubstanceRow>());
  check_key(*work, full<Measurement>(), full_but_changed<Measurement>(),
            with(full<Measurement>(), [](auto& m) { m.at_cm += 1; }));
  check_key(*work, full<Reaction>(), full_but_changed<Reaction>(),
            with(full<Reaction>(), [](auto& r) { r.side.reset(); }));
  check_key(*work, full<Unit>(), full_but_changed<Unit>(),
            with(full<Unit>(), [](auto& u) { u.copy += 1; }));
  work->put(bare<Unit>());
  check_key(*work, full<Handover>(), full_but_changed<Handover>(), bare<Handover>());
  check_key(*work, full<OrderLine>(), full_but_changed<OrderLine>(),
            with(full<OrderLine>(), [](auto& l) { l.copy += 1; }));
  check_key(*work, full<ClaimLine>(), full_but_changed<ClaimLine>(),
            with(full<ClaimLine>(), [](auto& l) {
              l.modifiers = {"K3", "LT"};
            }));
  check_key(*work, full<InvoiceLine>(), full_but_changed<InvoiceLine>(),
            with(full<InvoiceLine>(), [](auto& l) { l.order_ref = ""; }));
  check_key(*work, full<BillingCode>(), full_but_changed<BillingCode>(), bare<BillingCode>());
  check_key(*work, full<PayerRule>(), full_but_changed<PayerRule>(),
            with(full<PayerRule>(), [](auto& r) { r.words = "condition"; }));
  check_key(*work, full<Remittance>(), full_but_changed<Remittance>(), bare<Remittance>());
  check_key(*work, full<RemittanceLine>(), full_but_changed<RemittanceLine>(),
            with(full<RemittanceLine>(), [](auto& l) { l.position = 3; }));
  check_key(*work, full<PartPaper>(), full_but_changed<PartPaper>(),
            with(full<PartPaper>(), [](auto& p) { p.paper = "order"; }));
  check_key(*work, full<ColumnMapping>(), full_but_changed<ColumnMapping>(), bare<ColumnMapping>());
  check_key(*work, full<Reservation>(), full_but_changed<Reservation>(),
            with(full<Reservation>(), [](auto& r) { r.needed_on.reset(); }));
  check_key(*work, full<Place>(), full_but_changed<Place>(), bare<Place>());
  check_key(*work, full<Loan>(), full_but_changed<Loan>(), bare<Loan>());
  check_key(*work, full<SupplierReturn>(), full_but_changed<SupplierReturn>(),
            bare<SupplierReturn>());
  check_key(*work, full<OrderHeader>(), full_but_changed<OrderHeader>(),
            with(full<OrderHeader>(), [](auto& h) { h.order_ref = "B"; }));
  check_key(*work, full<OrderPromise>(), full_but_changed<OrderPromise>(),
            with(full<OrderPromise>(), [](auto& p) { p.copy += 1; }));
  check_key(*work, full<OrderPiece>(), full_but_changed<OrderPiece>(),
            with(full<OrderPiece>(), [](auto& p) { p.position += 1; }));
  check_key(*work, full<OrderRevision>(), full_but_changed<OrderRevision>(),
            with(full<OrderRevision>(), [](auto& r) { r.revision += 1; }));
  check_key(*work, full<OrderRevisionLine>(), full_but_changed<OrderRevisionLine>(),
            with(full<OrderRevisionLine>(), [](auto& l) { l.position += 1; }));
}

TEST_CASE_TEMPLATE("an empty part of a natural key counts as a value", Engine, SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  const auto work = store->begin_write(anna);
  add_referred(*work);
  work->put(bare<Sensitivity>());
  work->put(bare<Reaction>());
  work->put(bare<ClaimLine>());
  work->put(bare<Reservation>());
  CHECK(error_of([&] { work->put(bare<Sensitivity>()); }) == StoreError::constraint);
  CHECK(error_of([&] { work->put(bare<Reaction>()); }) == StoreError::constraint);
  CHECK(error_of([&] { work->put(bare<ClaimLine>()); }) == StoreError::constraint);
  CHECK(error_of([&] { work->put(bare<Reservation>()); }) == StoreError::constraint);
}

TEST_CASE_TEMPLATE("a reference to something that is not stored is refused by its name", Engine,
                   SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  const auto work = store->begin_write(anna);
  add_referred(*work);
  const auto missing = [&](const auto& record, const std::string& name) {
    try {
      work->put(record);
    } catch (const StoreFailure& failure) {
      return failure.error() == StoreError::not_found &&
             std::string{failure.what()}.find(name) != std::string::npos;
    }
    return false;
  };
  const auto day = make_date(2026, 1, 1);
  CHECK(missing(Unit{.patient = {"P-9"}, .item = {"L-1"}, .issued_on = day}, "P-9"));
  CHECK(missing(Unit{.patient = {"P-1"}, .item = {"L-9"}, .issued_on = day}, "L-9"));
  CHECK(missing(OrderLine{.supplier = {"S-9"}, .item = {"L-1"}, .ordered_on = day}, "S-9"));
  CHECK(missing(Item{.code = {"L-3"}, .supplier = {"S-9"}}, "S-9"));
  CHECK(missing(Usage{.patient = {""}, .from_date = day}, "patient"));
  CHECK(error_of([&] { work->put_instead({4711}, full<Patient>()); }) == StoreError::not_found);
}

TEST_CASE_TEMPLATE("records follow a patient whose reference is corrected", Engine,
                   SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = engine.open();
  const auto work = store->begin_write(anna);
  add_referred(*work);
  work->put(bare<Unit>());
  const auto rows = work->template all<Patient>();
  work->put_instead(rows[0].id, Patient{.ref = {"P-100"}});
  CHECK(work->template all<Unit>()[0].record.patient.text == "P-100");
  CHECK(error_of([&] { work->put(bare<Usage>()); }) == StoreError::not_found);
}

}  // namespace sparewell::store::test::natural_key_test
