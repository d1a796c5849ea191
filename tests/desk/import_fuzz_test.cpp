/// Damages valid files in a fixed series of ways: an import must never fail, and must account for
/// every row.
#include <random>

#include <doctest/doctest.h>

#include "desk/clinic_folder.hpp"

namespace import_fuzz_test {

using namespace sparewell;
using namespace sparewell::test;

namespace {

/// Puts, removes or exchanges one piece of text somewhere.
std::string damaged(std::string text, std::mt19937& random) {
  static const std::vector<std::string> pieces{",",
                                               "\"",
                                               "\n",
                                               "\r\n",
                                               "\r",
                                               ";",
                                               "\"\"",
                                               "-",
                                               "9999999999999",
                                               "0",
                                               " ",
                                               "\xC3\xA9",
                                               "\xE9",
                                               std::string(1, '\0'),
                                               "2026-02-30",
                                               "LN-1",
                                               "\xEF\xBB\xBF",
                                               "sep=;\n",
                                               "1e9",
                                               "\t",
                                               "P1,"};
  const auto below = [&](std::size_t n) { return static_cast<std::size_t>(random()) % n; };
  const std::size_t at = below(text.size() + 1);
  switch (below(4)) {
    case 0:
      text.insert(at, pieces[below(pieces.size())]);
      break;
    case 1:
      text.erase(at, 1 + below(12));
      break;
    case 2:
      text.replace(at, below(6), pieces[below(pieces.size())]);
      break;
    default: {
      const std::size_t from = below(text.size() + 1);
      text.insert(at, text.substr(from, below(60)));
    }
  }
  return text;
}

}  // namespace

TEST_CASE("Two thousand damaged files are imported without failure, every row accounted for") {
  std::mt19937 random{20261125};
  std::vector<std::string> names;
  for (const auto& [name, text] : full_folder()) names.push_back(name);
  ClinicFolder clean;
  write_full_folder(clean);
  ClinicFolder rejects;
  auto store = empty_store();
  REQUIRE(import(*store, clean.path()).clean());
  int rows = 0;
  int refused = 0;
  for (int round = 0; round < 2000; ++round) {
    const auto& name = names[static_cast<std::size_t>(round) % names.size()];
    ClinicFolder folder;
    auto text = full_folder().at(name);
    for (int times = 0; times <= round % 3; ++times) text = damaged(std::move(text), random);
    folder.write(name, text);
    CAPTURE(text);
    const auto report = import(*store, folder.path());
    REQUIRE(report.files.size() == 1);
    const auto& file = report.files[0];
    REQUIRE(file.rows == file.added + file.changed + file.unchanged + file.refused);
    REQUIRE(file.refused == static_cast<int>(report.refused.size()));
    if (!file.refusal.empty()) REQUIRE(file.rows == 0);
    REQUIRE(report.rejects_folder.empty() == (file.refused == 0));
    rows += file.rows;
    refused += file.refused;
    if (round % 100 == 99) {
      store = empty_store();
      REQUIRE(import(*store, clean.path()).clean());
    }
  }
  // The series is worth something only when it reaches rows, both good and bad.
  CHECK(rows > 2000);
  CHECK(refused > 300);
}

}  // namespace import_fuzz_test
