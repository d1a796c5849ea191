#include <limits>

#include <fmt/format.h>

#include "store/engines.hpp"
#include "store/examples.hpp"

namespace sparewell::store::test::round_trip_test {
namespace {

template <class Record>
void check_round_trip(Store& store) {
  CAPTURE(typeid(Record).name());
  const std::size_t before = store.read()->all<Record>().size();
  const auto work = store.begin_write(anna);
  const auto bare_id = work->put(bare<Record>());
  const auto full_id = work->put(full<Record>());
  work->commit();

  auto rows = store.read()->all<Record>();
  REQUIRE(rows.size() == before + 2);
  CHECK(rows[before].id == bare_id);
  CHECK(rows[before].record == bare<Record>());
  CHECK(rows[before + 1].id == full_id);
  CHECK(rows[before + 1].record == full<Record>());

  const auto again = store.begin_write(anna);
  again->put_instead(full_id, full_but_changed<Record>());
  again->commit();
  rows = store.read()->all<Record>();
  REQUIRE(rows.size() == before + 2);
  CHECK(rows[before].record == bare<Record>());
  CHECK(rows[before + 1].id == full_id);
  CHECK(rows[before + 1].record == full_but_changed<Record>());
}

template <class Engine>
std::unique_ptr<Store> store_with_referred(const Engine& engine) {
  auto store = engine.open();
  const auto work = store->begin_write(anna);
  add_referred(*work);
  work->commit();
  return store;
}

ItemCode item_code(int number) {
  return {fmt::format("W-{}", number)};
}

/// Stores one record for each word of a list; `set` puts the word into the record.
template <class Word, class Set>
void check_words(Set set) {
  const auto store = open_in_memory(fixed_now);
  const auto work = store->begin_write(anna);
  add_referred(*work);
  for (std::size_t i = 0; i < words<Word>().size(); ++i) {
    CAPTURE(words<Word>()[i]);
    CHECK_NOTHROW(set(*work, static_cast<Word>(i), static_cast<int>(i) + 1));
  }
}

}  // namespace

TEST_CASE_TEMPLATE("every record comes back as it was stored, bare, full and changed", Engine,
                   SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = store_with_referred(engine);
  auto& s = *store;
  SUBCASE("supplier") {
    const auto work = s.begin_write(anna);
    const auto id = work->put(full<Supplier>());
    work->put_instead(id, full_but_changed<Supplier>());
    CHECK(work->template all<Supplier>()[0].record == bare<Supplier>());
    CHECK(work->template all<Supplier>()[1].record == full_but_changed<Supplier>());
  }
  SUBCASE("item") {
    check_round_trip<Item>(s);
  }
  SUBCASE("patient") {
    check_round_trip<Patient>(s);
  }
  SUBCASE("prosthesis") {
    check_round_trip<Prosthesis>(s);
  }
  SUBCASE("usage") {
    check_round_trip<Usage>(s);
  }
  SUBCASE("sensitivity") {
    check_round_trip<Sensitivity>(s);
  }
  SUBCASE("decision") {
    check_round_trip<SensitivityDecision>(s);
  }
  SUBCASE("substance relation") {
    check_round_trip<SubstanceRow>(s);
  }
  SUBCASE("measurement") {
    check_round_trip<Measurement>(s);
  }
  SUBCASE("reaction") {
    check_round_trip<Reaction>(s);
  }
  SUBCASE("unit") {
    check_round_trip<Unit>(s);
  }
  SUBCASE("order line") {
    check_round_trip<OrderLine>(s);
  }
  SUBCASE("claim line") {
    check_round_trip<ClaimLine>(s);
  }
  SUBCASE("billing code") {
    check_round_trip<BillingCode>(s);
  }
  SUBCASE("payer's rule") {
    check_round_trip<PayerRule>(s);
  }
  SUBCASE("remittance") {
    check_round_trip<Remittance>(s);
  }
  SUBCASE("remittance line") {
    check_round_trip<RemittanceLine>(s);
  }
  SUBCASE("paper of a part") {
    check_round_trip<PartPaper>(s);
  }
  SUBCASE("column mapping") {
    check_round_trip<ColumnMapping>(s);
  }
  SUBCASE("invoice line") {
    check_round_trip<InvoiceLine>(s);
  }
  SUBCASE("reservation") {
    check_round_trip<Reservation>(s);
  }
  SUBCASE("place") {
    check_round_trip<Place>(s);
  }
  SUBCASE("loan") {
    check_round_trip<Loan>(s);
  }
  SUBCASE("return to a supplier") {
    check_round_trip<SupplierReturn>(s);
  }
  SUBCASE("handover") {
    {
      const auto work = s.begin_write(anna);
      CHECK(error_of([&] { work->put(bare<Handover>()); }) == StoreError::constraint);
      work->put(bare<Unit>());
      work->put(full<Unit>());
      work->commit();
    }
    check_round_trip<Handover>(s);
  }
  SUBCASE("order header") {
    check_round_trip<OrderHeader>(s);
  }
  SUBCASE("promise of an order line") {
    check_round_trip<OrderPromise>(s);
  }
  SUBCASE("ordered piece") {
    check_round_trip<OrderPiece>(s);
  }
}

TEST_CASE("the clinic is loaded as one value") {
  const SqliteFile engine;
  const auto store = store_with_referred(engine);
  {
    const auto work = store->begin_write(anna);
    work->put(full<Unit>());
    work->put(full<ClaimLine>());
    work->record({.lot = {.item = {"L-1"}, .lot = "A"},
                  .place = "shelf 1",
                  .quantity = 3,
                  .on = make_date(2026, 5, 1)});
    work->commit();
  }
  const auto clinic = load_clinic(*store->read());
  CHECK(clinic.items.size() == 2);
  CHECK(clinic.patients.size() == 2);
  REQUIRE(clinic.units.size() == 1);
  CHECK(clinic.units[0] == full<Unit>());
  CHECK(clinic.claim_lines.size() == 1);
  CHECK(clinic.shelf.size() == 1);
}

TEST_CASE("every word of every list can be stored") {
  check_words<Kind>([](UnitOfWork& work, Kind kind, int n) {
    work.put(Item{.code = item_code(n), .kind = kind});
  });
  check_words<Attachment>([](UnitOfWork& work, Attachment attachment, int n) {
    work.put(Item{.code = item_code(n), .attachment = attachment});
  });
  check_words<Material>([](UnitOfWork& work, Material material, int n) {
    work.put(Item{.code = item_code(n), .material = material});
  });
  const auto day = [](int n) { return make_date(2026, 1, static_cast<unsigned>(n)); };
  check_words<Side>([&](UnitOfWork& work, Side side, int n) {
    work.put(Prosthesis{.patient = {"P-1"}, .side = side, .delivered_on = day(n)});
  });
  check_words<Level>([&](UnitOfWork& work, Level level, int n) {
    work.put(Prosthesis{.patient = {"P-1"}, .level = level, .delivered_on = day(n)});
  });
  check_words<Suspension>([&](UnitOfWork& work, Suspension suspension, int n) {
    work.put(Prosthesis{.patient = {"P-1"}, .suspension = suspension, .delivered_on = day(n)});
  });
  check_words<Stage>([&](UnitOfWork& work, Stage stage, int n) {
    work.put(Prosthesis{.patient = {"P-1"}, .stage = stage, .delivered_on = day(n)});
  });
  check_words<Activity>([&](UnitOfWork& work, Activity activity, int n) {
    work.put(Usage{.patient = {"P-1"}, .from_date = day(n), .activity = activity});
  });
  check_words<Sweating>([&](UnitOfWork& work, Sweating sweating, int n) {
    work.put(Usage{.patient = {"P-1"}, .from_date = day(n), .sweating = sweating});
  });
  check_words<EndReason>([&](UnitOfWork& work, EndReason reason, int n) {
    auto unit = full<Unit>();
    unit.end_reason = reason;
    unit.copy = n;
    work.put(unit);
  });
  check_words<OrderState>([&](UnitOfWork& work, OrderState state, int n) {
    auto line = full<OrderLine>();
    line.state = state;
    line.copy = n;
    work.put(line);
  });
  check_words<MovementKind>([&](UnitOfWork& work, MovementKind kind, int n) {
    work.record({.lot = {.item = {"L-1"}, .lot = ""},
                 .place = "shelf 1",
                 .kind = kind,
                 .quantity = n,
                 .on = day(n)});
  });
}

TEST_CASE_TEMPLATE("what one record alone shows to be wrong is refused", Engine,
                   SPAREWELL_ENGINES) {
  const Engine engine;
  const auto store = store_with_referred(engine);
  const auto work = store->begin_write(anna);
  const auto refused = [&](const auto& record) {
    return error_of([&] { work->put(record); }) == StoreError::constraint;
  };
  SUBCASE("a unit worn more than all of the time") {
    auto unit = full<Unit>();
    unit.share = 1.01;
    CHECK(refused(unit));
    unit.share = std::numeric_limits<double>::quiet_NaN();
    CHECK(refused(unit));
  }
  SUBCASE("a unit that ended before it was issued") {
    auto unit = full<Unit>();
    unit.ended_on = unit.issued_on - days{1};
    CHECK(refused(unit));
  }
  SUBCASE("a handover signed before it, or overridden by nobody") {
    work->put(full<Unit>());
    auto handover = full<Handover>();
    handover.signed_on = handover.issued_on - days{1};
    CHECK(refused(handover));
    handover = full<Handover>();
    handover.override_by.clear();
    CHECK(refused(handover));
    handover = full<Handover>();
    handover.booked_place.clear();
    CHECK(refused(handover));
    CHECK_NOTHROW(work->put(full<Handover>()));
  }
  SUBCASE("a reason for an end that has no day") {
    auto unit = full<Unit>();
    unit.ended_on.reset();
    CHECK(refused(unit));
  }
  SUBCASE("a quantity below zero") {
    auto line = full<OrderLine>();
    line.quantity = -1;
    CHECK(refused(line));
  }
  SUBCASE("a day outside the calendar of the program") {
    auto unit = full<Unit>();
    unit.issued_on = make_date(1899, 12, 31);
    CHECK(refused(unit));
    unit.issued_on = make_date(1900, 1, 1);
    CHECK_NOTHROW(work->put(unit));
  }
  SUBCASE("a currency that is none") {
    CHECK(refused(Supplier{.name = {"A"}, .currency = {"eur"}}));
  }
  SUBCASE("a record without its identifier") {
    CHECK(refused(Supplier{}));
    CHECK(refused(Item{}));
    CHECK(refused(Patient{}));
  }
  SUBCASE("a size range that is turned round") {
    CHECK(refused(Item{.code = {"T"}, .size_min_cm = 30, .size_max_cm = 20}));
  }
  SUBCASE("a modifier that would read as two") {
    auto line = full<ClaimLine>();
    line.modifiers = {"LT;RT"};
    CHECK(refused(line));
  }
}

}  // namespace sparewell::store::test::round_trip_test
