#include "desk/held_page.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/budget_typed.hpp"
#include "desk/order_reasons.hpp"
#include "desk/part_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

/// From here on a part is likely enough to be worn out soon that somebody should act (our choice).
constexpr double soon_chance = 0.1;

std::vector<Column> need_columns() {
  return {{said("Patient"), 22, Align::left, "", 1},
          {said("Side"), 6, Align::left, ""},
          {said("Part in use"), 34, Align::left, "", 2},
          {said("Issued"), 12, Align::left, ""},
          {said("Held back for"), 14, Align::left,
           said("What speaks against giving the patient the same again")},
          {said("Foreseen instead"), 15, Align::left,
           said("The size that suits the limb as it was measured, or as it is foreseen")},
          {said("Worn out in 90 days"), 17, Align::right,
           said("Chance that the part is worn out within 90 days")}};
}

std::vector<Column> line_columns() {
  return {{said("Supplier"), 20, Align::left, "", 1},
          {said("Item"), 14, Align::left, said("The clinic's item code")},
          {said("Description"), 32, Align::left, "", 2},
          {said("Quantity"), 9, Align::right, said("Pieces that would be ordered, in whole packs")},
          {said("Cost"), 15, Align::right,
           said("Quantity times the price at this quantity, without freight")},
          {said("May run out"), 11, Align::right,
           said("Chance of running out before the next order could arrive, as it is not ordered")}};
}

std::string held_for(const HeldNeed& need) {
  if (need.sensitivity) return said("sensitivity");
  return need.forecast ? said("size, foreseen") : said("size");
}

}  // namespace

HeldPage::HeldPage() : needs_{need_columns()}, lines_{line_columns()} {}

TableRow HeldPage::need_row(const HeldNeed& need) const {
  const Unit& unit = day_->clinic().units[need.unit];
  const Item* item = day_->index().item(unit.item);
  TableRow row;
  row.id = fmt::format("{}", need.unit);
  row.cells = {
      {patient_words(*day_, unit.patient), {}},
      {shown_word(unit.side), {}},
      {item ? fmt::format("{}  {}", unit.item.text, item_words(*item)) : unit.item.text, {}},
      date_cell(unit.issued_on, ""),
      {held_for(need), {}},
      {need.next_item ? need.next_item->text : std::string{said("nothing")}, {}},
      {chance_words(need.chance), need.chance}};
  row.search = folded(fmt::format("{} {} {} {} {}", row.cells[0].text, row.cells[1].text,
                                  row.cells[2].text, row.cells[4].text, unit.serial));
  return row;
}

TableRow HeldPage::line_row(const supply::HeldLine& held) const {
  const auto& line = held.line;
  const Item* item = day_->index().item(line.item);
  TableRow row;
  row.id = fmt::format("{}\n{}\n{}", line.supplier.text, line.item.text, line.place);
  row.cells = {{line.supplier.text, {}},
               {line.item.text, {}},
               {item ? item_words(*item) : std::string{said("not in the catalogue")}, {}},
               count_cell(line.quantity),
               cost_cell(line.unit_cost, line.quantity),
               {chance_words(line.chance_short), line.chance_short}};
  return row;
}

void HeldPage::show(DayPtr day) {
  day_ = std::move(day);
  auto needs = day_->assessment().held_needs;
  std::ranges::stable_sort(needs, std::ranges::greater{}, &HeldNeed::chance);
  std::vector<TableRow> rows;
  for (const auto& need : needs) rows.push_back(need_row(need));
  needs_.fill(std::move(rows));
  rows.clear();
  for (const auto& held : day_->assessment().held) rows.push_back(line_row(held));
  lines_.fill(std::move(rows));
}

std::string HeldPage::title() const {
  return count() == 0 ? said("Held back")
                      : say("Held back ({})", number_words(static_cast<long long>(count())));
}

std::string HeldPage::needs_summary() const {
  if (!day_ || needs_.total() == 0) {
    return said(
        "No part in use is held back: none conflicts with a recorded sensitivity of its patient "
        "or has a size that the limb has left or is about to leave.");
  }
  const auto soon = std::ranges::count_if(day_->assessment().held_needs, [](const HeldNeed& need) {
    return need.chance >= soon_chance;
  });
  const auto held =
      say_n("{} part in use is not ordered again, because the patient should not get the same.",
            "{} parts in use are not ordered again, because the patient should not get the same.",
            needs_.total(), number_words(static_cast<long long>(needs_.total())));
  const auto near =
      soon == 0 ? say("None has a chance of 10 % or more to be worn out within {} days.", told_days)
                : say_n("{} has a chance of 10 % or more to be worn out within {} days.",
                        "{} have a chance of 10 % or more to be worn out within {} days.",
                        static_cast<unsigned long>(soon), number_words(soon), told_days);
  return fmt::format("{} {}", held, near);
}

std::string HeldPage::lines_summary() const {
  if (!day_ || !day_->assessment().budget) {
    return said(
        "No budget is set, so no order line is held back for one. Write a sum above to spend it "
        "where it prevents most shortages.");
  }
  const auto& budget = *day_->assessment().budget;
  const auto lines = static_cast<long long>(lines_.total());
  auto words =
      lines == 0
          ? say("The budget of {} leaves out no whole order line.", amount_words(budget))
          : say_n(
                "{} order line is left out to keep to the budget of {}, which goes where it "
                "prevents most shortages.",
                "{} order lines are left out to keep to the budget of {}, which goes where it "
                "prevents most shortages.",
                lines_.total(), number_words(lines), amount_words(budget));
  const bool unlimited =
      std::ranges::any_of(day_->assessment().proposal, [&](const supply::ProposalLine& line) {
        return line.unit_cost && line.unit_cost->currency != budget.currency;
      });
  if (unlimited) words += said(" Lines in another currency are not limited.");
  return words;
}

const HeldNeed* HeldPage::need(const std::string& id) const {
  if (!day_) return nullptr;
  const auto& needs = day_->assessment().held_needs;
  const auto found = std::ranges::find_if(
      needs, [&](const HeldNeed& each) { return fmt::format("{}", each.unit) == id; });
  return found == needs.end() ? nullptr : &*found;
}

std::string HeldPage::words(const std::string& id) const {
  const auto* chosen = need(id);
  return chosen ? chosen->words : std::string{};
}

std::optional<std::size_t> HeldPage::unit_of(const std::string& id) const {
  const auto* chosen = need(id);
  return chosen ? std::optional{chosen->unit} : std::nullopt;
}

std::string HeldPage::caution() {
  return said(
      "Only a recorded conflict, a recent measurement or the trend of the limb's measurements "
      "holds a part back; what is not recorded is not known to be safe. This list supports and "
      "does not replace clinical judgement: a "
      "clinician decides what the patient gets instead.");
}

std::string HeldPage::budget_text() const {
  return day_ && day_->assessment().budget ? plain_text(*day_->assessment().budget) : "";
}

Expected<std::optional<Money>> HeldPage::read_budget(const std::string& text) const {
  if (!day_) return std::nullopt;
  return budget_typed(text, day_->clinic().settings.currency);
}

}  // namespace sparewell::desk
