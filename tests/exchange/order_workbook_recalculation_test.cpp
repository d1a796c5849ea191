// Lets a spreadsheet program calculate the workbook anew and compares with the stored values.
#include <cstdlib>
#include <fstream>
#include <iostream>
#include <sstream>

#define DOCTEST_CONFIG_IMPLEMENT
#include <doctest/doctest.h>

#include "exchange/order_made.hpp"
#include "exchange/order_workbook.hpp"

using namespace sparewell;
using namespace sparewell::exchange;
using namespace sparewell::exchange::testing;

namespace {

constexpr int skipped = 77;

/// A profile of its own, so that no running office program is disturbed, set to calculate every
/// formula when a file is opened instead of trusting the stored values.
void make_profile(const std::filesystem::path& profile) {
  std::filesystem::create_directories(profile / "user");
  std::ofstream{profile / "user" / "registrymodifications.xcu"}
      << R"(<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>
)";
}

std::string calculated(const std::filesystem::path& workbook) {
  const auto folder = workbook.parent_path();
  make_profile(folder / "profile");
  const std::string command = "soffice -env:UserInstallation=file://" +
                              (folder / "profile").string() +
                              " --headless --convert-to csv --outdir '" + folder.string() + "' '" +
                              workbook.string() + "' >/dev/null 2>&1";
  REQUIRE(std::system(command.c_str()) == 0);
  auto csv = workbook;
  csv.replace_extension(".csv");
  std::ifstream file{csv};
  REQUIRE(file);
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

}  // namespace

TEST_CASE("A spreadsheet program comes to the same totals") {
  PurchaseOrder order = small_order();
  order.lines.push_back(line("K-1", 7, 123456));
  order.lines.push_back(line("J-1", 2, 5000, "JPY"));
  order.lines.push_back(line("N-1", 4, 1));
  order.lines.back().unit_cost.reset();
  order.lines.back().description = "=1+1";
  const auto file = fresh_folder("recalculated") / "order.xlsx";
  write_order_workbook(order, file);
  const std::string csv = calculated(file);
  CAPTURE(csv);
  // By hand: 3 * 412.50, 12 * 19.99, 7 * 1234.56, their sum, 2 * 5000.
  for (const char* wanted : {",1237.5,EUR", ",239.88,EUR", ",8641.92,EUR", ",10119.3,EUR",
                             "known costs,,,,,10000,JPY", "=1+1", "2026-11-25"}) {
    CHECK(csv.find(wanted) != std::string::npos);
  }
  for (const char* error : {"#NAME", "#VALUE", "#REF", "Err:"}) {
    CHECK(csv.find(error) == std::string::npos);
  }
}

int main(int argc, char** argv) {
  if (std::system("command -v soffice >/dev/null 2>&1") != 0) {
    std::cerr << "SKIPPED: soffice is not installed, so no spreadsheet program has checked the "
                 "workbook's formulas.\n";
    return skipped;
  }
  return doctest::Context{argc, argv}.run();
}
