#include "desk/alternative_parts.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/expected_wear.hpp"
#include "desk/issue_pieces.hpp"
#include "desk/issue_words.hpp"
#include "desk/part_words.hpp"
#include "desk/substance_table.hpp"
#include "desk/suspension_table.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

/// The sentences of what has to be asked or may be told, the verdict first.
std::vector<IssueFinding> told_of(const care::Alternative& each, const AlternativesQuestion& of,
                                  Suspension suspension) {
  std::vector<IssueFinding> told{sensitivity_finding(each.verdict, *each.item),
                                 fit_finding(each.fit, *each.item, of.side)};
  for (const auto& found : each.attachment) {
    told.push_back(attachment_finding(found, *each.item, suspension));
  }
  return told;
}

std::string supply_words(const care::Alternative& each) {
  const Item& item = *each.item;
  auto words = each.supply.on_hand > 0 ? say("{} on the shelf.", number_words(each.supply.on_hand))
                                       : std::string{said("None on the shelf.")};
  if (each.supply.on_hand == 0 && item.lead_days) {
    words += say(" {} quotes {}.", item.supplier.text, count_words(*item.lead_days, "day", "days"));
  }
  words += item.unit_cost ? fmt::format(" {}", amount_words(*item.unit_cost))
                          : std::string{said(" No price is recorded")};
  if (each.supply.expected_days) {
    words += say("; expected to last about {} with this patient",
                 span_words(*each.supply.expected_days));
  }
  return words + ".";
}

std::string price_change(const Money& now, const Money& before) {
  if (now.currency != before.currency) return "";
  const auto by = now.minor - before.minor;
  if (by == 0) return "";
  const Money difference{by < 0 ? -by : by, now.currency};
  return by < 0 ? say("{} less", amount_words(difference))
                : say("{} more", amount_words(difference));
}

/// The description without the size, as one line of a maker is known.
std::string line_of(const Item& item) {
  auto text = description_without_size(item);
  while (!text.empty() && (text.back() == ' ' || text.back() == ',')) text.pop_back();
  return text;
}

bool is_other_line(const Item& now, const Item& before) {
  return line_of(now) != line_of(before);
}

std::string changes_words(const Item& now, const Item& before) {
  std::vector<std::string> changes;
  const auto differs = [&](std::string_view what, std::string_view a, std::string_view b) {
    if (a == b) return;
    changes.push_back(
        b.empty() ? fmt::format("{} {}", what, a)
                  : say("{} {} instead of {}", what, a.empty() ? said("not stated") : a, b));
  };
  if (is_other_line(now, before)) changes.push_back(say("another line: {}", line_of(now)));
  differs(said("material"), shown_word(now.material), shown_word(before.material));
  differs(said("size"), now.size_label, before.size_label);
  differs(said("attachment"), shown_word(now.attachment), shown_word(before.attachment));
  differs(said("thread"), now.thread, before.thread);
  differs(said("supplier"), now.supplier.text, before.supplier.text);
  if (now.unit_cost && before.unit_cost) {
    const auto price = price_change(*now.unit_cost, *before.unit_cost);
    if (!price.empty()) changes.push_back(price);
  }
  return list_words(changes);
}

}  // namespace

Expected<AlternativeParts> find_alternatives(const Assessment& assessment,
                                             const AlternativesQuestion& question) {
  const Clinic& clinic = assessment.clinic;
  const ClinicIndex index{clinic};
  if (index.patient(question.patient) == nullptr) {
    return refuse(say("There is no patient '{}'; check the reference.", question.patient.text));
  }
  const Item* worn = index.item(question.item);
  if (worn == nullptr && !question.item.empty()) {
    return refuse(say("The catalogue has no item '{}'; check the code.", question.item.text));
  }
  if (worn == nullptr && !question.function) {
    return refuse(say("Name the item that is worn, or what is missing."));
  }
  const Date today = assessment.today;
  const auto supply = [&](const Item& item) {
    IssueQuestion fresh;
    fresh.patient = question.patient;
    fresh.side = question.side;
    fresh.item = item.code;
    fresh.day = today;
    return care::ItemSupply{free_pieces(clinic, item.code, question.patient, today),
                            expected_days(assessment, fresh)};
  };
  const care::Wanted wanted{question.patient, question.side, worn,
                            question.function.value_or(care::Function::locking_liner), today};
  const auto substances = substances_of(clinic, today);
  auto ranked = care::alternatives(clinic, wanted, built_in_chain_rules(), *substances, supply);
  const auto on_side = care::worn_on(clinic, index, question.patient, question.side, today);
  const auto suspension = on_side.prosthesis ? on_side.prosthesis->suspension : Suspension::pin;
  AlternativeParts made{question, {}, ranked.left_out};
  for (auto& each : ranked.found) {
    AlternativePart part{*each.item, each, "suits", "", ""};
    for (const auto& finding : told_of(each, question, suspension)) {
      if (finding.gravity != care::Gravity::note) part.key = "ask";
      part.words += finding.words + " ";
    }
    part.words += supply_words(each);
    if (worn != nullptr) {
      part.changes = changes_words(*each.item, *worn);
      if (care::usually_touches_skin(worn->kind) && is_other_line(*each.item, *worn)) {
        part.words += said(" The catalogue does not say for which level a part is made; look.");
      }
    }
    made.parts.push_back(std::move(part));
  }
  return made;
}

std::string left_out_words(const care::LeftOut& left_out) {
  std::vector<std::string> reasons;
  const auto& [conflict, size, thread, suspension] = left_out;
  if (conflict > 0) reasons.push_back(say("{} for a conflict with a sensitivity", conflict));
  if (size > 0) reasons.push_back(say("{} for the size", size));
  if (thread > 0) reasons.push_back(say("{} for another thread", thread));
  if (suspension > 0) reasons.push_back(say("{} without work in the suspension", suspension));
  if (reasons.empty()) return "";
  const int all = conflict + size + thread + suspension;
  return say_n("{} more item is left out: {}.", "{} more items are left out: {}.",
               static_cast<unsigned long>(all), number_words(all), list_words(reasons));
}

std::vector<Column> alternative_columns() {
  return {{said("Rank"), 5, Align::right, "", 0},
          {said("Item"), 10, Align::left, "", 0},
          {said("Part"), 26, Align::left, "", 2},
          {said("Checks"), 13, Align::left,
           said("Whether something has to be asked first; no objection is no promise"), 0},
          {said("On the shelf"), 11, Align::right,
           said("Usable pieces that are promised to nobody else"), 0},
          {said("Price"), 12, Align::right, "", 0},
          {said("Lasts about"), 11, Align::right, said("Expected with this patient"), 0},
          {said("What would change"), 30, Align::left, "", 3}};
}

std::vector<TableRow> alternative_rows(const AlternativeParts& found) {
  std::vector<TableRow> rows;
  for (const auto& part : found.parts) {
    TableRow row;
    row.id = part.item.code.text;
    const auto& lasts = part.ranked.supply.expected_days;
    const auto& price = part.item.unit_cost;
    row.cells = {count_cell(static_cast<int>(rows.size()) + 1),
                 {part.item.code.text, {}},
                 {item_words(part.item), {}},
                 {part.key == "ask" ? said("Ask first") : said("No objection"), {}},
                 count_cell(part.ranked.supply.on_hand),
                 {price ? amount_words(*price) : said("no price"),
                  price ? std::optional{price->major()} : std::nullopt},
                 {lasts ? span_words(*lasts) : said("not known"),
                  lasts ? std::optional<double>{*lasts} : std::nullopt},
                 {part.changes, {}}};
    row.strong = part.key == "suits";
    rows.push_back(std::move(row));
  }
  return rows;
}

}  // namespace sparewell::desk
