#include <algorithm>
#include <cmath>
#include <set>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/part_words.hpp"
#include "desk/wear_page.hpp"
#include "desk/wear_rows.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using Lot = std::pair<ItemCode, std::string>;

std::set<Lot> flagged_in(const std::vector<wear::EarlyEndings>& tested) {
  std::set<Lot> flagged;
  for (const auto& endings : tested) {
    if (endings.flagged) flagged.emplace(endings.item, endings.lot);
  }
  return flagged;
}

Cell days_cell(double days) {
  return {count_words(std::lround(days), "day", "days"), days};
}

/// Two figures after the point, and never a bare 0: the chances are all small.
Cell chance_cell(double chance) {
  if (chance < 0.00005) return {said("under 0.01 %"), chance};
  return {say("{:.2f} %", 100 * chance), chance};
}

TableRow flag_row(const std::string& name, std::size_t position,
                  const wear::EarlyEndings& endings) {
  TableRow row;
  row.id = fmt::format("{} {}", name, position);
  row.strong = true;
  row.cells = {{endings.lot.empty() ? said("Item") : said("Lot"), std::nullopt},
               {endings.item.text, std::nullopt},
               {endings.lot.empty() ? said("all") : endings.lot, std::nullopt},
               count_cell(endings.units),
               count_cell(endings.early),
               {say("{:.1f}", endings.expected), endings.expected},
               {say("{} of {}", endings.early_patients, endings.patients),
                static_cast<double>(endings.early_patients)}};
  return row;
}

std::string flag_word(const Unit& unit, const std::set<Lot>& lots, const std::set<Lot>& items) {
  if (lots.contains({unit.item, unit.lot})) return said("lot");
  return items.contains({unit.item, ""}) ? said("item") : "";
}

TableRow early_row(const Day& day, const wear::EarlyUnit& early, const std::string& flag) {
  const auto& unit = day.clinic().units[early.unit];
  const auto* item = day.index().item(unit.item);
  TableRow row;
  row.id = std::to_string(early.unit);
  row.marks = item ? kind_mark(item->kind) : 0;
  row.strong = !flag.empty();
  const auto part = item ? kind_words(*item) : std::string{said("not in catalogue")};
  row.cells = {{patient_words(day, unit.patient), std::nullopt},
               {shown_word(unit.side), std::nullopt},
               {capitalised(part), std::nullopt},
               {unit.item.text, std::nullopt},
               {unit.lot, std::nullopt},
               {unit.serial, std::nullopt},
               date_cell(unit.issued_on, ""),
               date_cell(unit.ended_on, ""),
               {unit.end_reason ? shown_word(*unit.end_reason) : "", std::nullopt},
               days_cell(early.wear_age_days),
               days_cell(early.median_days),
               chance_cell(early.chance),
               {flag, std::nullopt}};
  row.search = folded(fmt::format("{} {} {} {} {} {}", row.cells[0].text, part, unit.item.text,
                                  unit.lot, unit.serial, flag.empty() ? "" : said("flagged")));
  return row;
}

}  // namespace

std::vector<Column> flag_columns() {
  return {
      {said("Flagged"), 8, Align::left, ""},
      {said("Item"), 14, Align::left, said("The clinic's item code"), 1},
      {said("Lot"), 14, Align::left, "", 1},
      {said("Parts"), 8, Align::right, said("How many were worn")},
      {said("Wore out early"), 8, Align::right, said("Before the wear age that nine in ten reach")},
      {said("Expected"), 8, Align::right, said("How many early ones chance alone would make")},
      {said("Patients with one"), 12, Align::right, said("Of all patients who had such a part")}};
}

std::vector<TableRow> flag_rows(const Day& day) {
  std::vector<TableRow> rows;
  const auto add = [&](const std::string& name, const std::vector<wear::EarlyEndings>& tested) {
    for (std::size_t i = 0; i < tested.size(); ++i) {
      if (tested[i].flagged) rows.push_back(flag_row(name, i, tested[i]));
    }
  };
  add("lot", day.surprises().lots);
  add("item", day.surprises().items);
  return rows;
}

std::vector<Column> early_columns() {
  return {{said("Patient"), 20, Align::left, "", 1},
          {said("Side"), 6, Align::left, ""},
          {said("Part"), 18, Align::left, "", 1},
          {said("Item"), 12, Align::left, said("The clinic's item code")},
          {said("Lot"), 10, Align::left, ""},
          {said("Serial"), 9, Align::left, ""},
          {said("Issued"), 13, Align::left, ""},
          {said("Worn out"), 12, Align::left, ""},
          {said("How"), 12, Align::left, said("How it wore out")},
          {said("Wear age"), 8, Align::right,
           said("In days of reference use: time worn, weighted by how hard it is used")},
          {said("Half reach"), 8, Align::right,
           said("The wear age that half of the parts like it reach")},
          {said("Chance"), 14, Align::right, said("To wear out so early")},
          {said("Flagged"), 8, Align::left, said("Its lot or its item is flagged")}};
}

std::vector<TableRow> early_rows(const Day& day) {
  const auto lots = flagged_in(day.surprises().lots);
  const auto items = flagged_in(day.surprises().items);
  std::vector<TableRow> rows;
  for (const auto& early : day.surprises().units) {
    const auto& unit = day.clinic().units[early.unit];
    rows.push_back(early_row(day, early, flag_word(unit, lots, items)));
  }
  std::ranges::stable_sort(rows, {}, [](const TableRow& row) { return !row.strong; });
  return rows;
}

}  // namespace sparewell::desk
