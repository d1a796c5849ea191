#include "store/engines.hpp"
#include "store/examples.hpp"
#include "store/sqlite/raw.hpp"

namespace sparewell::store::test::upgrade_test {
namespace {

namespace fs = std::filesystem;

/// The form of today and one step more.
sqlite::Options with_next_step(const std::string& sql) {
  sqlite::Options options;
  options.migrations.push_back({sqlite::last_version(options.migrations) + 1, sql});
  return options;
}

/// A clinic file of the form of today, closed.
void make_form_of_today(const SqliteFile& engine) {
  const auto store = engine.open();
  const auto work = store->begin_write(anna);
  work->put(full<Patient>());
  work->commit();
}

int today_version() {
  return sqlite::last_version(sqlite::our_migrations());
}

constexpr const char* rebuild_usage =
    "CREATE TABLE new_patients (id INTEGER PRIMARY KEY, ref TEXT NOT NULL UNIQUE,"
    " given_name TEXT NOT NULL, family_name TEXT NOT NULL, birth_date TEXT, next_visit TEXT,"
    " place TEXT NOT NULL, payer TEXT NOT NULL, member_id TEXT NOT NULL,"
    " shoe_size REAL) STRICT;"
    "INSERT INTO new_patients SELECT *, NULL FROM patients;"
    "DROP TABLE patients;"
    "ALTER TABLE new_patients RENAME TO patients;";

}  // namespace

TEST_CASE("an upgrade first makes a copy and then keeps every record") {
  const SqliteFile engine;
  make_form_of_today(engine);
  const auto store = sqlite::open_file(engine.path(), OpenMode::existing, fixed_now,
                                       with_next_step(rebuild_usage));
  CHECK(store->read()->all<Patient>().at(0).record == full<Patient>());
  CHECK(store->verify().empty());
  auto raw = raw_database(engine.path());
  CHECK(raw.execAndGet("PRAGMA user_version").getInt() == today_version() + 1);
  CHECK_NOTHROW(raw.exec("SELECT shoe_size FROM patients"));

  const auto copy = engine.path() + ".before-upgrade-1.db";
  REQUIRE(fs::exists(copy));
  CHECK(raw_database(copy).execAndGet("PRAGMA user_version").getInt() == today_version());
  CHECK(raw_database(copy).execAndGet("SELECT COUNT(*) FROM patients").getInt() == 1);
}

TEST_CASE("a file of any earlier form is brought to the form of today") {
  for (std::size_t steps = 1; steps < sqlite::our_migrations().size(); ++steps) {
    const SqliteFile engine;
    sqlite::Options earlier;
    earlier.migrations.resize(steps);
    (void)sqlite::open_file(engine.path(), OpenMode::create, fixed_now, earlier);
    const auto store = engine.open();
    CHECK(raw_database(engine.path()).execAndGet("PRAGMA user_version").getInt() ==
          today_version());
    CHECK(store->verify().empty());
  }
}

TEST_CASE("an upgrade never overwrites an earlier copy, and none is made without need") {
  const SqliteFile engine;
  make_form_of_today(engine);
  const auto first = engine.path() + ".before-upgrade-1.db";
  write_bytes(first, "kept");
  for (int i = 0; i < 2; ++i) {
    (void)sqlite::open_file(engine.path(), OpenMode::existing, fixed_now,
                            with_next_step("CREATE TABLE more (id INTEGER PRIMARY KEY) STRICT"));
  }
  CHECK(bytes_of(first) == "kept");
  CHECK(fs::exists(engine.path() + ".before-upgrade-2.db"));
  CHECK_FALSE(fs::exists(engine.path() + ".before-upgrade-3.db"));
}

TEST_CASE("an upgrade that fails midway leaves the file as it was") {
  const SqliteFile engine;
  make_form_of_today(engine);
  std::string sql;
  SUBCASE("through an error") {
    sql = "DROP TABLE reservations; DELETE FROM nosuch";
  }
  SUBCASE("through a broken rule") {
    sql =
        "DROP TABLE reservations; INSERT INTO patients (ref, given_name, family_name)"
        " VALUES ('', '', '')";
  }
  SUBCASE("through a reference that leads nowhere") {
    sql = "INSERT INTO usage (patient_id, from_date) VALUES (99, '2026-01-01')";
  }
  const auto open = [&] {
    (void)sqlite::open_file(engine.path(), OpenMode::existing, fixed_now, with_next_step(sql));
  };
  const auto before = bytes_of(engine.path());
  CHECK_THROWS_AS(open(), StoreFailure);
  CHECK(bytes_of(engine.path()) == before);
  const auto store = engine.open();
  CHECK(store->read()->all<Patient>().size() == 1);
  CHECK(store->verify().empty());
}

TEST_CASE("references are checked again after an upgrade") {
  const SqliteFile engine;
  make_form_of_today(engine);
  const auto store = sqlite::open_file(engine.path(), OpenMode::existing, fixed_now,
                                       with_next_step(rebuild_usage));
  const auto work = store->begin_write(anna);
  CHECK(error_of([&] {
          work->put(Usage{.patient = {"P-9"}, .from_date = make_date(2026, 1, 1)});
        }) == StoreError::not_found);
}

TEST_CASE("a new file takes every step without a copy") {
  const SqliteFile engine;
  const auto store =
      sqlite::open_file(engine.path(), OpenMode::create, fixed_now, with_next_step(rebuild_usage));
  CHECK(raw_database(engine.path()).execAndGet("PRAGMA user_version").getInt() ==
        today_version() + 1);
  CHECK_FALSE(fs::exists(engine.path() + ".before-upgrade-1.db"));
}

}  // namespace sparewell::store::test::upgrade_test
