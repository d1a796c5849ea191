#include "desk/billing/month_close.hpp"

#include <algorithm>
#include <map>
#include <tuple>

#include "clinic/say.hpp"
#include "desk/billing/month_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

/// The last close of the month; nullopt when there is none.
std::optional<MonthBooks> last_close(const store::Snapshot& snapshot, Date month) {
  std::optional<MonthBooks> last;
  for (auto& books : closed_months(snapshot)) {
    if (books.close.month == month) last = std::move(books);
  }
  return last;
}

std::string last_closed_words(const MonthClose& close) {
  return say("{} was closed on {} by {}", month_title(close.month), date_words(close.closed_on),
             close.closed_by);
}

}  // namespace

Expected<MonthBooks> close_month(store::UnitOfWork& work, const MonthCloseRequest& request,
                                 Date today) {
  const Date month = billing::month_of(request.month);
  if (request.by.empty()) return refuse(say("Say who closes the month."));
  if (billing::month_after(month) > today) {
    return refuse(say("{} is not over; it can be closed from {} on.", month_title(month),
                      date_words(billing::month_after(month))));
  }
  MonthBooks made{{month, 1, today, request.by, request.note},
                  billing::book_entries(store::load_clinic(work), month)};
  if (made.entries.empty()) {
    return refuse(say("Nothing of {} is on record; check the month.", month_title(month)));
  }
  if (const auto last = last_close(work, month)) {
    if (billing::changes_since_close(last->entries, made.entries).changes.empty()) {
      return refuse(
          say("{}, and nothing of it has changed since.", last_closed_words(last->close)));
    }
    made.close.number = last->close.number + 1;
  }
  work.put(made.close);
  for (ClosedEntry& entry : made.entries) {
    entry.number = made.close.number;
    work.put(entry);
  }
  return made;
}

std::vector<MonthBooks> closed_months(const store::Snapshot& snapshot) {
  std::map<std::pair<Date, int>, MonthBooks> months;
  for (auto& row : snapshot.all<MonthClose>()) {
    months[{row.record.month, row.record.number}].close = std::move(row.record);
  }
  for (auto& row : snapshot.all<ClosedEntry>()) {
    months[{row.record.month, row.record.number}].entries.push_back(std::move(row.record));
  }
  std::vector<MonthBooks> made;
  for (auto& [of, books] : months) made.push_back(std::move(books));
  return made;
}

Expected<MonthChanges> changes_of_month(const store::Snapshot& snapshot, Date month) {
  const auto last = last_close(snapshot, billing::month_of(month));
  if (!last) {
    return refuse(say("{} has not been closed; close it first.", month_title(month)));
  }
  const auto now = billing::book_entries(store::load_clinic(snapshot), month);
  return MonthChanges{last->close, billing::changes_since_close(last->entries, now)};
}

int open_until(std::span<const billing::WorkItem> items, Date month) {
  const Date end = billing::month_after(billing::month_of(month));
  return static_cast<int>(std::ranges::count_if(items, [&](const billing::WorkItem& item) {
    return item.state != billing::WorkState::settled && item.finding.since < end;
  }));
}

std::vector<billing::EntryTotal> sums_of(const std::vector<billing::BookChange>& changes) {
  std::vector<ClosedEntry> differences;
  for (const auto& change : changes) {
    ClosedEntry entry = change.after ? *change.after : *change.before;
    entry.quantity =
        (change.after ? change.after->quantity : 0) - (change.before ? change.before->quantity : 0);
    entry.amount = change.difference();
    differences.push_back(std::move(entry));
  }
  return billing::totals_of(differences).totals;
}

}  // namespace sparewell::desk
