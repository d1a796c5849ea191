#include "desk/today/today_page.hpp"

#include <algorithm>
#include <array>

#include "clinic/say.hpp"
#include "desk/today/billing_today.hpp"
#include "desk/today/orders_today.hpp"
#include "desk/today/patients_today.hpp"
#include "desk/today/shelf_today.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

constexpr std::array all_work{Work::orders, Work::patients, Work::billing};
constexpr RowKind compare_kind{
    to_say("Books"), to_say("What needs a person in billing is known once the books are compared."),
    to_say("Compare the books")};
constexpr RowKind nothing_kind{
    to_say("Nothing to do"),
    to_say("Nothing of this job asks for a person, as far as it is recorded. What is not recorded "
           "is not found."),
    ""};

unsigned bit_of(Work work) {
  return 1U << static_cast<unsigned>(work);
}

bool asks(const TodayRow& row) {
  return !row.action.empty();
}

TodayRow nothing_row(Work work) {
  static constexpr std::array sentences{
      to_say("Nothing is to be ordered, sent, received or settled on the shelf today."),
      to_say("No patient needs anything today, as far as it is recorded."),
      to_say("Nothing disagrees in the books, and no answer is due.")};
  auto row = start_row(fmt::format("nothing {}", static_cast<int>(work)), work, Urgency::today,
                       nothing_kind, said(sentences[static_cast<std::size_t>(work)]));
  row.action.clear();
  return row;
}

TableRow table_row(const TodayRow& row) {
  TableRow made;
  made.id = row.id;
  const bool to_do = asks(row);
  made.cells = {
      {work_words(row.work), static_cast<double>(row.work)},
      {to_do ? urgency_words(row.urgency) : std::string{}, static_cast<double>(row.urgency)},
      {row.title, {}},
      {row.sentence, {}}};
  std::string searched;
  for (const auto& cell : made.cells) searched += fmt::format("{} ", cell.text);
  made.search = folded(searched);
  made.marks = bit_of(row.work);
  made.strong = to_do && row.urgency == Urgency::overdue;
  return made;
}

}  // namespace

TodayWorkPtr find_work(const Day& day) {
  auto rows = orders_today(day);
  for (auto* more : {&shelf_today, &patients_today}) {
    for (auto& row : more(day)) rows.push_back(std::move(row));
  }
  sort_today(rows);
  return std::make_shared<const std::vector<TodayRow>>(std::move(rows));
}

TodayPage::TodayPage()
    : table_{{{said("Job"), 25, Align::left, ""},
              {said("When"), 12, Align::left,
               said("Overdue: its day has passed. Today: to be done or decided today. This week: "
                    "within seven days.")},
              {said("What"), 24, Align::left, ""},
              {said("Why"), 60, Align::left, said("The chosen row stands whole below the list"),
               1}}} {}

void TodayPage::show(DayPtr day, TodayWorkPtr work) {
  day_ = std::move(day);
  work_ = std::move(work);
  fill();
}

void TodayPage::show_books(Books books, const WorklistPtr& items) {
  books_ = books;
  items_ = items;
  fill();
}

void TodayPage::show_only(std::optional<Work> work) {
  table_.require(work ? bit_of(*work) : 0);
}

std::vector<TodayRow> TodayPage::rows_of_books() const {
  if (books_ == Books::compared) return billing_today(*day_, items_);
  const bool under_way = books_ == Books::comparing;
  auto row = start_row("books", Work::billing, Urgency::today, compare_kind,
                       under_way ? said("The books are being compared; what needs a person in "
                                        "billing is then told here.")
                                 : said("The books have not been compared yet, so that it is not "
                                        "known what needs a person."));
  row.destination.then = Command::compare_books;
  if (under_way) row.action.clear();
  return {std::move(row)};
}

void TodayPage::fill() {
  rows_.clear();
  if (day_ && work_) {
    rows_ = *work_;
    for (auto& row : rows_of_books()) rows_.push_back(std::move(row));
    for (const auto work : all_work) {
      if (std::ranges::find(rows_, work, &TodayRow::work) == rows_.end()) {
        rows_.push_back(nothing_row(work));
      }
    }
    sort_today(rows_);
  }
  std::vector<TableRow> rows;
  rows.reserve(rows_.size());
  for (const auto& each : rows_) rows.push_back(table_row(each));
  table_.fill(std::move(rows));
}

int TodayPage::count() const {
  return static_cast<int>(std::ranges::count_if(rows_, asks));
}

std::string TodayPage::headline() const {
  if (!day_) return said("Open a clinic file to see what needs a person today.");
  std::vector<std::string> parts;
  for (const auto work : all_work) {
    const auto of_work = [&](const TodayRow& row) { return row.work == work && asks(row); };
    if (work == Work::billing && books_ != Books::compared) continue;
    const auto rows = std::ranges::count_if(rows_, of_work);
    parts.push_back(rows == 0 ? say("nothing in {}", work_words(work))
                              : say("{} in {}", rows, work_words(work)));
  }
  const auto overdue = std::ranges::count_if(
      rows_, [](const TodayRow& row) { return asks(row) && row.urgency == Urgency::overdue; });
  auto text = say("What needs a person: {}", list_words(parts));
  text += overdue == 0 ? said("; nothing is overdue.")
                       : say_n("; {} is overdue.", "; {} are overdue.",
                               static_cast<unsigned long>(overdue), overdue);
  if (books_ == Books::comparing) text += fmt::format(" {}", said("The books are being compared."));
  return text;
}

std::string TodayPage::empty_words() const {
  return day_ ? said("Nothing answers to what you asked for.")
              : said("Open a clinic file to see what needs a person today.");
}

const TodayRow* TodayPage::row(const std::string& id) const {
  const auto found = std::ranges::find(rows_, id, &TodayRow::id);
  return found == rows_.end() ? nullptr : &*found;
}

TodayDetail TodayPage::detail(const std::string& id) const {
  const auto* chosen = row(id);
  if (chosen == nullptr) return {};
  const auto title = asks(*chosen) ? fmt::format("{}, {}: {}", work_words(chosen->work),
                                                 urgency_words(chosen->urgency), chosen->title)
                                   : fmt::format("{}: {}", work_words(chosen->work), chosen->title);
  return {title, chosen->sentence, chosen->help, chosen->action};
}

std::optional<Destination> TodayPage::destination(const std::string& id) const {
  const auto* chosen = row(id);
  if (chosen == nullptr || !asks(*chosen)) return std::nullopt;
  return chosen->destination;
}

std::vector<std::string> TodayPage::work_choices() {
  std::vector<std::string> choices{said("Everything")};
  for (const auto work : all_work) choices.push_back(work_words(work));
  return choices;
}

}  // namespace sparewell::desk
