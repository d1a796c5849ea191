#include "store/engines.hpp"
#include "store/examples.hpp"
#include "store/sqlite/raw.hpp"

namespace sparewell::store::test::copy_test {
namespace {

namespace fs = std::filesystem;

std::size_t files_in(const fs::path& folder) {
  return static_cast<std::size_t>(
      std::distance(fs::directory_iterator{folder}, fs::directory_iterator{}));
}

void add_patient(Store& store, const std::string& ref) {
  const auto work = store.begin_write(anna);
  work->put(Patient{.ref = {ref}});
  work->commit();
}

}  // namespace

TEST_CASE_TEMPLATE("a copy is one complete file that opens as a clinic", Engine,
                   SPAREWELL_ENGINES) {
  const Engine engine;
  const TemporaryFolder folder;
  const auto store = engine.open();
  add_patient(*store, "P-1");
  const auto copy = folder.file("copy.db");
  store->copy_to(copy);
  CHECK(files_in(folder.path()) == 1);
  add_patient(*store, "P-2");
  const auto opened = open_clinic_file(copy, OpenMode::existing, fixed_now);
  CHECK(opened->read()->template all<Patient>().size() == 1);
  CHECK(opened->verify().empty());
}

TEST_CASE("a copy holds what is committed while another program writes") {
  const SqliteFile engine;
  const auto store = engine.open();
  const auto writer = engine.open();
  add_patient(*writer, "P-1");
  const auto work = writer->begin_write(anna);
  work->put(Patient{.ref = {"P-2"}});
  const auto copy = engine.folder().file("copy.db");
  store->copy_to(copy);
  work->commit();
  CHECK(open_clinic_file(copy, OpenMode::existing, fixed_now)->read()->all<Patient>().size() == 1);
}

TEST_CASE("an older copy is replaced; a file of another kind is not") {
  const SqliteFile engine;
  const auto store = engine.open();
  const TemporaryFolder folder;
  const auto copy = folder.file("copy.db");
  store->copy_to(copy);
  add_patient(*store, "P-1");
  store->copy_to(copy);
  CHECK(open_clinic_file(copy, OpenMode::existing, fixed_now)->read()->all<Patient>().size() == 1);

  for (const std::string content : {"a letter", ""}) {
    const auto letter = folder.file("letter.txt");
    write_bytes(letter, content);
    CHECK(error_of([&] { store->copy_to(letter); }) == StoreError::not_a_clinic);
    CHECK(bytes_of(letter) == content);
  }
  CHECK(files_in(folder.path()) == 2);
}

TEST_CASE("a clinic file in use is not overwritten by a copy") {
  const SqliteFile engine;
  const auto store = engine.open();
  add_patient(*store, "P-1");
  CHECK(error_of([&] { store->copy_to(engine.path()); }) == StoreError::cannot_open);
  CHECK(store->read()->all<Patient>().size() == 1);
}

TEST_CASE("a copy to a place that does not exist leaves nothing") {
  const SqliteFile engine;
  const auto store = engine.open();
  CHECK(error_of([&] { store->copy_to(engine.folder().file("none/copy.db")); }) ==
        StoreError::cannot_open);
}

TEST_CASE("a damaged clinic is not copied") {
  const SqliteFile engine;
  const auto store = engine.open();
  add_patient(*store, "P-1");
  raw_database(engine.path())
      .exec(
          "PRAGMA foreign_keys = OFF; INSERT INTO usage (patient_id, from_date) VALUES (99, "
          "'2026-01-01')");
  const TemporaryFolder folder;
  CHECK(error_of([&] { store->copy_to(folder.file("copy.db")); }) == StoreError::corrupt);
  CHECK(files_in(folder.path()) == 0);
}

}  // namespace sparewell::store::test::copy_test
