// Lets a spreadsheet program calculate a list anew and write it, and reads back what it wrote.
#include <cstdlib>
#include <fstream>
#include <iostream>

#define DOCTEST_CONFIG_IMPLEMENT
#include <doctest/doctest.h>

#include "exchange/list_made.hpp"
#include "exchange/order_made.hpp"
#include "exchange/sheet/sheet_table.hpp"

using namespace sparewell;
using namespace sparewell::exchange;
using namespace sparewell::exchange::testing;

namespace {

constexpr int skipped = 77;

/// Calculates every formula when a file is opened instead of trusting the stored values.
void make_profile(const std::filesystem::path& profile) {
  std::filesystem::create_directories(profile / "user");
  std::ofstream{profile / "user" / "registrymodifications.xcu"}
      << R"(<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>
)";
}

/// The workbook as the spreadsheet program writes it.
std::filesystem::path rewritten(const std::filesystem::path& workbook) {
  const auto folder = workbook.parent_path();
  make_profile(folder / "profile");
  const auto out = folder / "out";
  const std::string command = "soffice -env:UserInstallation=file://" +
                              (folder / "profile").string() +
                              " --headless --convert-to xlsx --outdir '" + out.string() + "' '" +
                              workbook.string() + "' >/dev/null 2>&1";
  REQUIRE(std::system(command.c_str()) == 0);
  return out / workbook.filename();
}

}  // namespace

TEST_CASE("A spreadsheet program comes to the same values, and its own workbook reads back alike") {
  const auto file = fresh_folder("list-recalculated") / "list.xlsx";
  write_list_workbook(small_list(), file);
  const auto ours = read_sheet(file);
  const auto theirs = read_sheet(rewritten(file));
  REQUIRE(ours.has_value());
  REQUIRE(theirs.has_value());
  REQUIRE(ours->rows.size() == theirs->rows.size());
  int compared = 0;
  for (std::size_t i = 0; i < ours->rows.size(); ++i) {
    CHECK(ours->rows[i].number == theirs->rows[i].number);
    for (std::size_t column = 0; column < 10; ++column) {
      const auto& a = ours->rows[i].at(column);
      const auto& b = theirs->rows[i].at(column);
      CAPTURE(a.text);
      CAPTURE(b.text);
      CHECK(a.kind == b.kind);
      if (a.kind == SheetCell::Kind::text) CHECK(a.text == b.text);
      if (a.kind == SheetCell::Kind::date) CHECK(a.date == b.date);
      CHECK(a.number == doctest::Approx(b.number));
      compared += a.blank() ? 0 : 1;
    }
  }
  CHECK(compared > 40);
}

int main(int argc, char** argv) {
  if (std::system("command -v soffice >/dev/null 2>&1") != 0) {
    std::cerr << "SKIPPED: soffice is not installed, so no spreadsheet program has checked the "
                 "lists' formulas.\n";
    return skipped;
  }
  return doctest::Context{argc, argv}.run();
}
