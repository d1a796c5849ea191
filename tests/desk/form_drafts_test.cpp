#include "desk/form_drafts.hpp"

#include <fstream>

#include <doctest/doctest.h>

namespace form_drafts_test {

using namespace sparewell::desk;
namespace fs = std::filesystem;

TEST_CASE("An unfinished entry comes back until it is discarded, and nobody else can read it") {
  const auto folder = fs::temp_directory_path() / "sparewell-drafts-test";
  fs::remove_all(folder);
  fs::create_directories(folder);
  const FormDrafts drafts{folder / "clinic.db"};
  const auto file = folder / "clinic.db.drafts";
  CHECK_FALSE(drafts.find("Lend: L1", 2));
  CHECK(drafts.keep("Lend: L1", {"2026-11-25 14:05", {"P-1", "2"}}));
  CHECK(drafts.keep("Move: L1", {"2026-11-25 14:06", {"north"}}));
  CHECK(fs::status(file).permissions() == (fs::perms::owner_read | fs::perms::owner_write));
  CHECK(drafts.find("Lend: L1", 2) == FormDraft{"2026-11-25 14:05", {"P-1", "2"}});
  // The form has another field now.
  CHECK_FALSE(drafts.find("Lend: L1", 3));
  drafts.discard("Lend: L1");
  CHECK_FALSE(drafts.find("Lend: L1", 2));
  CHECK(drafts.find("Move: L1", 1));
  drafts.discard("Move: L1");
  CHECK_FALSE(fs::exists(file));
  std::ofstream{file} << "damaged";
  CHECK_FALSE(drafts.find("Lend: L1", 2));
  fs::remove_all(folder);
}

TEST_CASE("A draft says when it was typed") {
  CHECK(draft_words({"2026-11-25 14:05", {}}, "2026-11-25") ==
        "Your unfinished entry of 14:05 is filled in.");
  CHECK(draft_words({"2026-11-24 14:05", {}}, "2026-11-25") ==
        "Your unfinished entry of 2026-11-24 14:05 is filled in.");
}

}  // namespace form_drafts_test
