#include "desk/billing/billing_page.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/billing/answering.hpp"
#include "desk/billing/finding_words.hpp"
#include "desk/part_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using billing::WorkItem;
using billing::WorkState;

constexpr unsigned first_book_bit = 1U << 3U;

unsigned bit_of(WorkState state) {
  return 1U << static_cast<unsigned>(state);
}
unsigned bit_of(billing::Book book) {
  return first_book_bit << static_cast<unsigned>(book);
}

Cell money_cell(const std::optional<Money>& money) {
  if (!money) return {said("not known"), {}};
  return {amount_words(*money), money->major()};
}

/// The title, short enough to be read down a column.
std::string short_title(billing::FindingKind kind) {
  return kind == billing::FindingKind::replaced_early ? std::string{said("Replaced early")}
                                                      : finding_title(kind);
}

std::string part_of(const billing::BillingFinding& finding) {
  if (finding.code.empty()) return finding.item.text;
  return finding.item.empty() ? finding.code
                              : fmt::format("{}  {}", finding.code, finding.item.text);
}

std::string money_part(const std::vector<Money>& sums, std::string_view what) {
  return sums.empty() ? std::string{} : fmt::format("{} {}", amounts_words(sums), what);
}

int count_of(const std::vector<WorkItem>& items, WorkState state) {
  return static_cast<int>(std::ranges::count(items, state, &WorkItem::state));
}

}  // namespace

std::string about_words(const Day& day, const billing::BillingFinding& finding) {
  if (!finding.patient.empty() && finding.supplier.empty()) {
    return patient_words(day, finding.patient);
  }
  if (finding.reference.empty()) return finding.supplier.text;
  return fmt::format("{}, {}", finding.reference, finding.supplier.text);
}

std::string state_words(const WorkItem& item) {
  const auto* answer = item.answer();
  if (answer == nullptr) return "";
  const auto given = fmt::format("{} {}", capitalised(shown_word(answer->answer)),
                                 short_date_words(answer->answered_on));
  if (item.has_changed) return say("{}; changed since", given);
  if (item.ask_again) return say("{}; ask again", given);
  return given;
}

BillingPage::BillingPage()
    : table_{
          {{said("Finding"), 21, Align::left, ""},
           {said("About"), 22, Align::left, said("The patient, or the supplier and the order"), 2},
           {said("Code and item"), 17, Align::left, ""},
           {said("Money"), 13, Align::right,
            said(
                "Above zero the clinic is to receive it; below zero it has to give it back, or was "
                "charged it")},
           {said("Age"), 10, Align::right,
            said("Since the part was handed out, billed or received")},
           {said("Answer"), 12, Align::left, said("What was decided last"), 1}}} {
  show_only(Shown::open, {});
}

TableRow BillingPage::row(const WorkItem& item) const {
  const auto& finding = item.finding;
  TableRow made;
  made.id = finding.key;
  made.cells = {{short_title(finding.kind), static_cast<double>(finding.kind)},
                {about_words(*day_, finding), {}},
                {part_of(finding), {}},
                money_cell(finding.money),
                {span_words(item.age_days), static_cast<double>(item.age_days)},
                {state_words(item), {}}};
  std::string searched = fmt::format("{} {} {}", finding.reference, finding.payer, finding.other);
  for (const auto& cell : made.cells) searched += fmt::format(" {}", cell.text);
  made.search = folded(searched);
  made.marks = bit_of(item.state) | bit_of(billing::book_of(finding.kind));
  made.strong = item.has_changed || item.ask_again;
  return made;
}

void BillingPage::show(DayPtr day, WorklistPtr items) {
  day_ = std::move(day);
  items_ = std::move(items);
  std::vector<TableRow> rows;
  if (items_) {
    rows.reserve(items_->size());
    for (const WorkItem& item : *items_) rows.push_back(row(item));
  }
  table_.fill(std::move(rows));
}

void BillingPage::show_only(Shown shown, std::optional<billing::Book> book) {
  unsigned marks = shown == Shown::all ? 0 : bit_of(static_cast<WorkState>(shown));
  if (book) marks |= bit_of(*book);
  table_.require(marks);
}

std::string BillingPage::empty_words() const {
  if (!day_) return said("Open a clinic file to see its books.");
  if (!items_) return said("The books have not been compared yet.");
  if (items_->empty()) {
    return said(
        "Nothing disagrees between what was handed out, billed, paid, ordered, received and "
        "invoiced, as far as it is recorded.");
  }
  return said("No finding answers to what you asked for.");
}

std::string BillingPage::summary() const {
  if (!items_) return "";
  std::vector<WorkItem> open;
  for (const WorkItem& item : *items_) {
    if (item.state == WorkState::open) open.push_back(item);
  }
  const auto stake = billing::stake_of(open);
  std::vector<std::string> parts;
  for (auto part : {money_part(stake.to_receive, said("to receive")),
                    money_part(stake.to_give, said("to give back or charged too much"))}) {
    if (!part.empty()) parts.push_back(std::move(part));
  }
  auto text = count_words(std::ssize(open), "finding is open", "findings are open");
  if (!parts.empty()) text += fmt::format(": {}", list_words(parts));
  text += ".";
  if (const int waiting = count_of(*items_, WorkState::waiting); waiting > 0) {
    text += fmt::format(" {}.", count_words(waiting, "waits for an answer", "wait for an answer"));
  }
  if (const int settled = count_of(*items_, WorkState::settled); settled > 0) {
    text += fmt::format(" {}.", count_words(settled, "is settled", "are settled"));
  }
  return text;
}

const WorkItem* BillingPage::item(const std::string& id) const {
  if (!items_) return nullptr;
  const auto found =
      std::ranges::find_if(*items_, [&](const WorkItem& each) { return each.finding.key == id; });
  return found == items_->end() ? nullptr : &*found;
}

FindingDetail BillingPage::detail(const std::string& id) const {
  FindingDetail made;
  const auto* chosen = item(id);
  if (chosen == nullptr) return made;
  const auto& finding = chosen->finding;
  made.title = fmt::format("{}: {}", finding_title(finding.kind), about_words(*day_, finding));
  made.what = finding_sentence(finding);
  const auto cause = cause_words(finding);
  made.settling =
      cause.empty() ? remedy_words(finding) : fmt::format("{} {}", cause, remedy_words(finding));
  for (const auto& answer : chosen->history) {
    made.history += fmt::format("{}{}", made.history.empty() ? "" : "\n", answer_words(answer));
  }
  if (chosen->has_changed) {
    made.history += fmt::format(
        "\n{}",
        said("The pieces or the money have changed since, so the answer no longer stands."));
  }
  made.sides = both_sides(day_->clinic(), finding);
  return made;
}

std::vector<std::string> BillingPage::shown_choices() {
  return {said("To do"), said("Waiting for an answer"), said("Settled"), said("All findings")};
}

std::vector<std::string> BillingPage::book_choices() {
  std::vector<std::string> choices{said("All books")};
  for (const auto book :
       {billing::Book::claims, billing::Book::payments, billing::Book::suppliers}) {
    choices.push_back(book_words(book));
  }
  return choices;
}

}  // namespace sparewell::desk
