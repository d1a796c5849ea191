#include <random>

#include <sys/stat.h>
#include <unistd.h>

#include "store/engines.hpp"
#include "store/examples.hpp"
#include "store/sqlite/connection.hpp"
#include "store/sqlite/file_check.hpp"
#include "store/sqlite/raw.hpp"

namespace sparewell::store::test::open_test {
namespace {

namespace fs = std::filesystem;

/// Opens an existing file and expects `error`, and that not a byte of the file has changed.
void check_refused(const std::string& path, StoreError error, OpenMode mode = OpenMode::existing) {
  const auto before = bytes_of(path);
  CHECK(error_of([&] { (void)open_clinic_file(path, mode, fixed_now); }) == error);
  CHECK(bytes_of(path) == before);
}

/// A closed clinic file with some hundred patients.
void make_clinic(const std::string& path) {
  const auto store = open_clinic_file(path, OpenMode::create, fixed_now);
  const auto work = store->begin_write(anna);
  for (int i = 0; i < 500; ++i) work->put(Patient{.ref = {"P-" + std::to_string(i)}});
  work->commit();
}

/// Runs as a user without rights to what root owns; back to the first user at the end.
class AsNobody {
 public:
  AsNobody() : was_{::geteuid()} {
    if (was_ == 0 && ::seteuid(65534) != 0) throw std::runtime_error{"cannot change user"};
  }
  ~AsNobody() {
    if (was_ == 0 && ::seteuid(was_) != 0) std::abort();
  }
  AsNobody(const AsNobody&) = delete;
  AsNobody& operator=(const AsNobody&) = delete;

 private:
  uid_t was_;
};

}  // namespace

TEST_CASE("a clinic file is made once and then opened") {
  const TemporaryFolder folder;
  const auto path = folder.file("clinic.db");
  CHECK(error_of([&] { (void)open_clinic_file(path, OpenMode::existing, fixed_now); }) ==
        StoreError::cannot_open);
  CHECK_FALSE(fs::exists(path));
  make_clinic(path);
  for (const auto mode : {OpenMode::existing, OpenMode::create}) {
    CHECK(open_clinic_file(path, mode, fixed_now)->read()->all<Patient>().size() == 500);
  }
  struct stat about {};
  REQUIRE(::stat(path.c_str(), &about) == 0);
  CHECK((about.st_mode & 07) == 0);  // nobody else reads it
}

TEST_CASE("closing leaves one file") {
  const TemporaryFolder folder;
  make_clinic(folder.file("clinic.db"));
  CHECK(std::distance(fs::directory_iterator{folder.path()}, fs::directory_iterator{}) == 1);
}

TEST_CASE("an empty file is taken for a new clinic only when one is to be made") {
  const TemporaryFolder folder;
  const auto path = folder.file("clinic.db");
  write_bytes(path, "");
  check_refused(path, StoreError::not_a_clinic);
  CHECK_NOTHROW((void)open_clinic_file(path, OpenMode::create, fixed_now));
}

TEST_CASE("a file that is no database is refused untouched") {
  const TemporaryFolder folder;
  const auto path = folder.file("clinic.db");
  std::mt19937 random{7};
  std::string noise(5000, '\0');
  for (auto& c : noise) c = static_cast<char>(random());
  for (const std::string& content :
       {std::string{"x"}, std::string{"a letter to the clinic"}, noise}) {
    write_bytes(path, content);
    check_refused(path, StoreError::not_a_clinic);
    check_refused(path, StoreError::not_a_clinic, OpenMode::create);
    check_refused(path, StoreError::not_a_clinic, OpenMode::again);
  }
}

TEST_CASE("a database of another program is refused untouched") {
  const TemporaryFolder folder;
  const auto path = folder.file("other.db");
  SUBCASE("with a number of its own") {
    raw_database(path).exec("PRAGMA application_id = 77; CREATE TABLE t (a)");
  }
  SUBCASE("without a number") {
    raw_database(path).exec("CREATE TABLE t (a)");
  }
  check_refused(path, StoreError::not_a_clinic);
  check_refused(path, StoreError::not_a_clinic, OpenMode::create);
}

TEST_CASE("a folder is refused") {
  const TemporaryFolder folder;
  CHECK(error_of([&] {
          (void)open_clinic_file(folder.path().string(), OpenMode::create, fixed_now);
        }) == StoreError::cannot_open);
  CHECK(error_of([&] {
          (void)open_clinic_file(folder.file("none/clinic.db"), OpenMode::create, fixed_now);
        }) == StoreError::cannot_open);
}

TEST_CASE("a file of a newer program is refused untouched") {
  const TemporaryFolder folder;
  const auto path = folder.file("clinic.db");
  make_clinic(path);
  raw_database(path).exec("PRAGMA user_version = 99");
  check_refused(path, StoreError::schema_too_new);
  check_refused(path, StoreError::schema_too_new, OpenMode::create);
}

TEST_CASE("a store that is open notices that a newer program has upgraded the file") {
  const SqliteFile engine;
  const auto store = engine.open();
  raw_database(engine.path()).exec("PRAGMA user_version = 99");
  CHECK(error_of([&] { (void)store->read(); }) == StoreError::schema_too_new);
  CHECK(error_of([&] { (void)store->begin_write(anna); }) == StoreError::schema_too_new);
}

TEST_CASE("a file that is cut off is refused as damaged") {
  const TemporaryFolder folder;
  const auto path = folder.file("clinic.db");
  make_clinic(path);
  const auto whole = bytes_of(path);
  for (const std::size_t length :
       {std::size_t{40}, std::size_t{100}, std::size_t{4096}, whole.size() / 2, whole.size() - 1}) {
    CAPTURE(length);
    write_bytes(path, whole.substr(0, length));
    check_refused(path, StoreError::corrupt);
  }
}

TEST_CASE("a file that was opened before is opened without being looked through") {
  const TemporaryFolder folder;
  const auto path = folder.file("clinic.db");
  CHECK(error_of([&] { (void)open_clinic_file(path, OpenMode::again, fixed_now); }) ==
        StoreError::cannot_open);
  make_clinic(path);
  const auto store = open_clinic_file(path, OpenMode::again, fixed_now);
  CHECK(store->read()->all<Patient>().size() == 500);
}

TEST_CASE("a file with garbage inside is refused as damaged") {
  const TemporaryFolder folder;
  const auto path = folder.file("clinic.db");
  make_clinic(path);
  auto bytes = bytes_of(path);
  std::fill(bytes.begin() + 4096, bytes.begin() + 4096 * 4, '\x5A');
  write_bytes(path, bytes);
  check_refused(path, StoreError::corrupt);
}

TEST_CASE("a file or folder without the right to write is refused as read-only") {
  const TemporaryFolder folder;
  const auto path = folder.file("clinic.db");
  make_clinic(path);
  SUBCASE("the file") {
    fs::permissions(folder.path(), fs::perms::all);
    fs::permissions(path, fs::perms{0444});
  }
  SUBCASE("the folder") {
    fs::permissions(path, fs::perms{0666});
    fs::permissions(folder.path(), fs::perms{0555});
  }
  {
    const AsNobody nobody;
    check_refused(path, StoreError::read_only);
  }
  fs::permissions(folder.path(), fs::perms::all);
}

TEST_CASE("a new file in a folder without the right to write is refused as read-only") {
  const TemporaryFolder folder;
  fs::permissions(folder.path(), fs::perms{0555});
  {
    const AsNobody nobody;
    CHECK(error_of([&] {
            (void)open_clinic_file(folder.file("clinic.db"), OpenMode::create, fixed_now);
          }) == StoreError::read_only);
  }
  fs::permissions(folder.path(), fs::perms::all);
}

TEST_CASE("network file systems are known by their numbers") {
  // Numbers from the manual page statfs(2).
  CHECK(sqlite::network_file_system(0x6969) == "NFS");
  CHECK(sqlite::network_file_system(0x517B) == "SMB");
  CHECK(sqlite::network_file_system(static_cast<long>(0xFF534D42)) == "CIFS");
  CHECK(sqlite::network_file_system(static_cast<std::int32_t>(0xFF534D42)) == "CIFS");
  CHECK(sqlite::network_file_system(0xEF53).empty());      // ext4
  CHECK(sqlite::network_file_system(0x01021994).empty());  // tmpfs
}

TEST_CASE("a misspelt column in double quotes is an error, not a text") {
  const SqliteFile engine;
  (void)engine.open();
  sqlite::Connection connection{engine.path(), sqlite::Use::write};
  CHECK_THROWS_AS((void)connection.text("SELECT \"nosuch\""), SQLite::Exception);
  CHECK_THROWS_AS(connection.database().exec("CREATE TABLE t (a CHECK (a <> \"x\")) STRICT"),
                  SQLite::Exception);
}

TEST_CASE("every connection has the safety settings") {
  const SqliteFile engine;
  (void)engine.open();
  sqlite::Connection connection{engine.path(), sqlite::Use::read};
  CHECK(connection.number("PRAGMA foreign_keys") == 1);
  CHECK(connection.number("PRAGMA trusted_schema") == 0);
  CHECK(connection.number("PRAGMA synchronous") == 2);
  CHECK(connection.text("PRAGMA journal_mode") == "wal");
  CHECK(connection.number("PRAGMA busy_timeout") == 5000);
  CHECK_THROWS_AS(connection.database().exec("DELETE FROM patients"), SQLite::Exception);
}

}  // namespace sparewell::store::test::open_test
