#include "bench/proposal_peers.hpp"

#include <chrono>
#include <cstdlib>
#include <fstream>
#include <map>

#include <fmt/format.h>
#include <fmt/os.h>
#include <xlsxwriter.h>

#include "supply/clinic_demand.hpp"
#include "supply/item_case.hpp"
#include "supply/lead_time.hpp"

namespace sparewell::bench {
namespace {

namespace fs = std::filesystem;

struct StockedCase {
  const Item* item = nullptr;
  int wait = 0;  ///< days to the next order day
  int position = 0;
  supply::LeadTime lead;
};

std::vector<StockedCase> stocked_cases(const Clinic& clinic, Date today) {
  const ClinicIndex index{clinic};
  const supply::LeadTimes lead_times{clinic};
  const supply::StockBook book{clinic};
  std::vector<StockedCase> made;
  for (const Item& item : clinic.items) {
    if (!item.stocked) continue;
    const Supplier* supplier = index.supplier(item.supplier);
    const auto order_days = supplier == nullptr ? OrderDays{} : supplier->order_days;
    const Date order_day = next_order_day(order_days, today);
    const auto lead = lead_times.of(item);
    const Date arrives = order_day + days{lead.mean_days()};
    const auto position = book.position(item.code, arrives, today, arrives);
    made.push_back({&item, days_between(today, order_day), position.total(), lead});
  }
  return made;
}

/// What is known of the life of one unit, as the peers see it.
struct UnitRow {
  const std::string* item = nullptr;
  double age, rate, shape, scale, a, b, loss;
};

std::vector<UnitRow> unit_rows(const Clinic& clinic, const std::vector<wear::LifeOfUnit>& lives) {
  const ClinicIndex index{clinic};
  std::vector<UnitRow> made;
  for (const auto& of : lives) {
    const Item* item = index.item(clinic.units[of.unit].item);
    if (item == nullptr || !item->stocked) continue;
    const auto& [life, others] = std::tie(of.life, of.others);
    const double loss =
        others.of(EndReason::lost).per_day() + others.of(EndReason::recall).per_day();
    made.push_back({&item->code.text, life.wear_age_days(), life.wear_in(1), life.shape(),
                    life.scale_days(), std::min(life.person().shape(), 1e9),
                    std::min(life.person().rate(), 1e9), loss});
  }
  return made;
}

/// A sheet of units with the chance of each to be replaced before an order of the next order day
/// arrives after the mean lead time, and a sheet of items that sums them and takes a normal
/// quantile: what a careful person would make.
void write_workbook(const std::vector<UnitRow>& units, const std::vector<StockedCase>& items,
                    const std::string& file) {
  lxw_workbook* book = workbook_new(file.c_str());
  lxw_worksheet* sheet = workbook_add_worksheet(book, "Units");
  std::map<std::string, double> until;
  for (const auto& item : items) until[item.item->code.text] = item.wait + item.lead.mean();
  lxw_row_t row = 0;
  for (const UnitRow& unit : units) {
    const double values[] = {unit.age, unit.rate, unit.shape, unit.scale,
                             unit.a,   unit.b,    unit.loss,  until.at(*unit.item)};
    worksheet_write_string(sheet, row, 0, unit.item->c_str(), nullptr);
    lxw_col_t column = 1;
    for (const double value : values) worksheet_write_number(sheet, row, column++, value, nullptr);
    const auto formula = fmt::format(
        "=1-(G{0}/(G{0}+((B{0}+C{0}*I{0})/E{0})^D{0}-(B{0}/E{0})^D{0}))^F{0}*EXP(-H{0}*I{0})",
        row + 1);
    worksheet_write_formula(sheet, row, 9, formula.c_str(), nullptr);
    worksheet_write_formula(sheet, row, 10, fmt::format("=J{0}*(1-J{0})", row + 1).c_str(),
                            nullptr);
    ++row;
  }
  lxw_worksheet* summary = workbook_add_worksheet(book, "Items");
  lxw_row_t at = 0;
  for (const auto& item : items) {
    worksheet_write_string(summary, at, 0, item.item->code.text.c_str(), nullptr);
    worksheet_write_number(summary, at, 1, item.position, nullptr);
    for (const auto& [column, source] : {std::pair{2, 'J'}, std::pair{3, 'K'}}) {
      worksheet_write_formula(
          summary, at, static_cast<lxw_col_t>(column),
          fmt::format("=SUMIF(Units!$A$1:$A${0},A{1},Units!${2}$1:${2}${0})", row, at + 1, source)
              .c_str(),
          nullptr);
    }
    worksheet_write_formula(
        summary, at, 4,
        fmt::format("=MAX(0,ROUNDUP(C{0}+NORMSINV(0.95)*SQRT(D{0})-B{0},0))", at + 1).c_str(),
        nullptr);
    ++at;
  }
  workbook_close(book);
}

std::optional<double> seconds_of(const std::string& command) {
  const auto start = std::chrono::steady_clock::now();
  if (std::system(command.c_str()) != 0) return std::nullopt;
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

std::string convert(const fs::path& folder, const std::string& file) {
  return fmt::format(
      "soffice '-env:UserInstallation=file://{0}/profile' --headless --convert-to ods --outdir "
      "'{0}/out' '{0}/{1}' >/dev/null 2>&1",
      folder.string(), file);
}

}  // namespace

void write_inputs(const Clinic& clinic, const std::vector<wear::LifeOfUnit>& lives, Date today,
                  const fs::path& folder) {
  fs::create_directories(folder);
  const auto units = unit_rows(clinic, lives);
  const auto items = stocked_cases(clinic, today);
  auto unit_file = fmt::output_file((folder / "units.csv").string());
  unit_file.print("item,age,rate,shape,scale,a,b,loss\n");
  for (const UnitRow& unit : units) {
    unit_file.print("{},{:.9g},{:.9g},{:.9g},{:.9g},{:.9g},{:.9g},{:.9g}\n", *unit.item, unit.age,
                    unit.rate, unit.shape, unit.scale, unit.a, unit.b, unit.loss);
  }
  auto item_file = fmt::output_file((folder / "items.csv").string());
  auto arrival_file = fmt::output_file((folder / "arrivals.csv").string());
  item_file.print("item,wait,service\n");
  arrival_file.print("item,days,chance\n");
  for (const auto& item : items) {
    item_file.print("{},{},{}\n", item.item->code.text, item.wait, clinic.settings.service_target);
    for (const auto& day : item.lead.distribution()) {
      arrival_file.print("{},{},{:.12g}\n", item.item->code.text, day.days, day.chance);
    }
  }
  write_workbook(units, items, (folder / "proposal.xlsx").string());
}

std::optional<double> time_r(const fs::path& folder) {
  const fs::path answer = folder / "seconds.txt";
  const auto whole =
      seconds_of(fmt::format("Rscript --vanilla '{}/tests/bench/proposal.R' '{}' > '{}' 2>&1",
                             SPAREWELL_SOURCE_DIR, folder.string(), answer.string()));
  std::ifstream in{answer};
  double seconds = 0;
  if (!whole || !(in >> seconds)) return std::nullopt;
  return seconds;
}

std::optional<double> time_spreadsheet(const fs::path& folder) {
  fs::create_directories(folder / "profile" / "user");
  // Calculate every formula on loading instead of trusting what is stored.
  std::ofstream{folder / "profile" / "user" / "registrymodifications.xcu"}
      << R"(<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>
)";
  workbook_close(workbook_new((folder / "empty.xlsx").c_str()));
  if (!seconds_of(convert(folder, "empty.xlsx"))) return std::nullopt;  // makes the profile
  const auto empty = seconds_of(convert(folder, "empty.xlsx"));
  const auto full = seconds_of(convert(folder, "proposal.xlsx"));
  if (!empty || !full) return std::nullopt;
  return *full - *empty;
}

Agreement compare_targets(const Clinic& clinic, const std::vector<wear::LifeOfUnit>& lives,
                          Date today, const fs::path& folder) {
  std::map<std::string, int> theirs;
  std::ifstream in{folder / "targets.csv"};
  std::string line;
  std::getline(in, line);
  while (std::getline(in, line)) {
    const auto comma = line.find(',');
    theirs[line.substr(0, comma)] = std::atoi(line.c_str() + comma + 1);
  }
  const supply::ClinicDemand demand{clinic, lives, today};
  const std::vector<supply::ChangingFrom> no_changes;
  supply::FreshCountsCache fresh;
  Agreement made;
  for (const auto& item : stocked_cases(clinic, today)) {
    const auto found = theirs.find(item.item->code.text);
    if (found == theirs.end()) continue;
    // The peers know nothing of new patients and changes of item.
    const int ours = supply::ItemDemand{today, {demand.users(item.item->code), no_changes}, fresh}
                         .until_arrival(today + days{item.wait}, item.lead)
                         .least_covering(clinic.settings.service_target);
    ++made.items;
    made.same += ours == found->second ? 1 : 0;
    made.within_one += std::abs(ours - found->second) <= 1 ? 1 : 0;
  }
  if (made.items > 0) {
    made.same /= made.items;
    made.within_one /= made.items;
  }
  return made;
}

}  // namespace sparewell::bench
