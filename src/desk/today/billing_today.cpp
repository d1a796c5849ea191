#include "desk/today/billing_today.hpp"

#include <algorithm>
#include <cstdlib>
#include <map>

#include "clinic/say.hpp"
#include "desk/billing/billing_jobs.hpp"
#include "desk/billing/finding_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using billing::WorkItem;
using billing::WorkState;
using Items = std::vector<const WorkItem*>;

constexpr RowKind again_kind{
    to_say("Ask again"),
    to_say("Somebody was asked about the finding, and the day on which the answer should have come "
           "is here. Ask again, or record the answer."),
    to_say("Answer the finding")};
constexpr RowKind changed_kind{
    to_say("Changed since answered"),
    to_say("The finding was answered, and its pieces or its money have changed since, so that the "
           "answer no longer stands."),
    to_say("Answer the finding")};
constexpr const char* open_action = to_say("Answer the finding");
constexpr RowKind month_kind{
    to_say("Month to close"),
    to_say(
        "A closed month keeps its records as they were, so that later changes can be seen. Close "
        "it once its findings are settled."),
    to_say("Close the month")};
constexpr RowKind payments_kind{
    to_say("Payments to read"),
    to_say("Until the payer's files are read, it cannot be told which claims were paid, denied or "
           "paid differently."),
    to_say("Read payments")};

const char* help_of(billing::Book book) {
  switch (book) {
    case billing::Book::claims:
      return to_say(
          "Between what was handed out and what was billed. Payers take claims for a limited time "
          "and take back what was billed wrongly. The row leads to the finding with the most "
          "money; the page has both sides, the likely cause and what settles it.");
    case billing::Book::payments:
      return to_say(
          "Between claims and what payers answered. Appeals have to be sent in time. The row leads "
          "to the finding with the most money; the page has both sides and what settles it.");
    default:
      return to_say(
          "Between orders, deliveries, invoices and credits of suppliers. The row leads to the "
          "finding with the most money; the page has both sides and what settles it.");
  }
}

std::string money_words(const Items& items) {
  std::vector<WorkItem> copies;
  for (const auto* item : items) {
    if (!item->finding.money || item->finding.money->minor != 0) copies.push_back(*item);
  }
  if (copies.empty()) return said("no money is at stake");
  const auto stake = billing::stake_of(copies);
  std::vector<std::string> parts;
  if (!stake.to_receive.empty()) {
    parts.push_back(say("{} to receive", amounts_words(stake.to_receive)));
  }
  if (!stake.to_give.empty()) {
    parts.push_back(say("{} to give back or charged too much", amounts_words(stake.to_give)));
  }
  return parts.empty() ? std::string{said("no sum is known")} : list_words(parts);
}

/// The one with the most money, in whole units of its currency; the oldest of those without.
const WorkItem& first_of(const Items& items) {
  return **std::ranges::max_element(items, {}, [](const WorkItem* item) {
    const auto& money = item->finding.money;
    return std::pair{money ? std::abs(money->major()) : 0.0, item->age_days};
  });
}

TodayRow row_of(std::string id, Urgency urgency, const RowKind& kind, std::string sentence,
                const Items& items) {
  auto row = start_row(std::move(id), Work::billing, urgency, kind, std::move(sentence));
  row.count = static_cast<int>(items.size());
  row.destination.to = Destination::To::billing;
  row.destination.row = first_of(items).finding.key;
  if (items.size() == 1) {
    row.destination.then = Command::answer_finding;
  } else {
    row.action = said("Go to the first finding");  // of many, both sides are looked at first
  }
  return row;
}

std::string lasting_words(const Items& items) {
  int oldest = 0;
  for (const auto* item : items) oldest = std::max(oldest, item->age_days);
  return span_words(oldest);
}

TodayRow open_row(billing::FindingKind kind, const Items& items) {
  const auto title = finding_title(kind);
  const auto book = billing::book_of(kind);
  const RowKind row_kind{title.c_str(), help_of(book), open_action};
  const auto urgency = book == billing::Book::suppliers ? Urgency::this_week : Urgency::today;
  return row_of(fmt::format("open {}", billing::finding_word(kind)), urgency, row_kind,
                say_n("{0} finding, {1} old: {2}.", "{0} findings, the oldest {1} old: {2}.",
                      items.size(), items.size(), lasting_words(items), money_words(items)),
                items);
}

void add_month(std::vector<TodayRow>& rows, const Day& day) {
  const auto months = months_to_close(day.clinic(), day.today());  // the newest first
  if (months.empty()) return;
  const auto& closes = day.clinic().month_closes;
  const bool closed = std::ranges::find(closes, months.front(), &MonthClose::month) != closes.end();
  if (closed) return;
  auto row =
      start_row(fmt::format("month {}", iso_text(months.front())), Work::billing,
                Urgency::this_week, month_kind,
                closes.empty() ? say("{} is over and not closed; no month has been closed yet.",
                                     month_words(months.front()))
                               : say("{} is over and not closed.", month_words(months.front())));
  row.destination.to = Destination::To::billing;
  row.destination.then = Command::close_month;
  rows.push_back(std::move(row));
}

void add_payments(std::vector<TodayRow>& rows, const Day& day) {
  const auto& clinic = day.clinic();
  if (clinic.claim_lines.empty()) return;
  std::optional<Date> last;
  for (const auto& paid : clinic.remittances) last = std::max(last, std::optional{paid.paid_on});
  if (last && *last + days{usual_days_between_payments} >= day.today()) return;
  auto row =
      start_row("payments", Work::billing, Urgency::this_week, payments_kind,
                last ? say("The newest payment that was read is of {}.", date_words(*last))
                     : std::string{said("Claims are recorded, and no payment has been read yet.")});
  row.destination.to = Destination::To::billing;
  row.destination.then = Command::read_payments;
  rows.push_back(std::move(row));
}

}  // namespace

std::vector<TodayRow> billing_today(const Day& day, const WorklistPtr& items) {
  std::vector<TodayRow> rows;
  if (!items) return rows;
  Items again;
  Items changed;
  std::map<billing::FindingKind, Items> open;
  for (const auto& item : *items) {
    if (item.state == WorkState::settled || item.state == WorkState::waiting) continue;
    if (item.ask_again) {
      again.push_back(&item);
    } else if (item.has_changed) {
      changed.push_back(&item);
    } else {
      open[item.finding.kind].push_back(&item);
    }
  }
  if (!again.empty()) {
    rows.push_back(row_of("again", Urgency::overdue, again_kind,
                          say_n("{} finding was asked about and should be answered by now: {}.",
                                "{} findings were asked about and should be answered by now: {}.",
                                again.size(), again.size(), money_words(again)),
                          again));
  }
  if (!changed.empty()) {
    rows.push_back(row_of("changed", Urgency::today, changed_kind,
                          say_n("{} finding has changed since it was answered: {}.",
                                "{} findings have changed since they were answered: {}.",
                                changed.size(), changed.size(), money_words(changed)),
                          changed));
  }
  for (const auto& [kind, of_kind] : open) rows.push_back(open_row(kind, of_kind));
  add_month(rows, day);
  add_payments(rows, day);
  return rows;
}

}  // namespace sparewell::desk
