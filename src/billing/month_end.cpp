#include "billing/month_end.hpp"

#include <algorithm>
#include <tuple>
#include <utility>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace sparewell::billing {
namespace {

std::string side_of(const std::optional<Side>& side) {
  return side ? std::string{word(*side)} : "no side";
}

std::optional<Money> times(const std::optional<Money>& each, int quantity) {
  if (!each) return std::nullopt;
  return *each * quantity;
}

class Entries {
 public:
  explicit Entries(Date month) : month_{month}, end_{month_after(month)} {}

  [[nodiscard]] bool holds(const std::optional<Date>& day) const {
    return day && month_ <= *day && *day < end_;
  }
  void add(BookEntry entry, std::string key, int quantity, std::optional<Money> amount) {
    list_.push_back({month_, 1, entry, std::move(key), quantity, amount});
  }

  /// Keys are made unique by a number where records are alike, as they were read.
  [[nodiscard]] std::vector<ClosedEntry> sorted() {
    std::ranges::stable_sort(list_, [](const ClosedEntry& a, const ClosedEntry& b) {
      return std::tie(a.entry, a.key, a.quantity, a.amount) <
             std::tie(b.entry, b.key, b.quantity, b.amount);
    });
    std::string key;
    int alike = 1;
    for (std::size_t at = 0; at < list_.size(); ++at) {
      const bool same = at > 0 && list_[at].entry == list_[at - 1].entry && list_[at].key == key;
      alike = same ? alike + 1 : 1;
      key = list_[at].key;
      if (same) list_[at].key += fmt::format(" ({})", alike);
    }
    return std::move(list_);
  }

 private:
  Date month_;
  Date end_;
  std::vector<ClosedEntry> list_;
};

void add_parts(const Clinic& clinic, Entries& entries) {
  const ClinicIndex index{clinic};
  for (const Unit& unit : clinic.units) {
    if (!entries.holds(unit.issued_on)) continue;
    const Item* item = index.item(unit.item);
    entries.add(BookEntry::part,
                fmt::format("{} {} {} of {}, lot {}, serial {}, piece {}", unit.patient.text,
                            word(unit.side), unit.item.text, iso_text(unit.issued_on), unit.lot,
                            unit.serial, unit.copy),
                1, item == nullptr ? std::nullopt : item->unit_cost);
  }
}

void add_claims(const Clinic& clinic, Entries& entries) {
  for (const ClaimLine& line : clinic.claim_lines) {
    if (!entries.holds(line.service_date)) continue;
    entries.add(BookEntry::claim,
                fmt::format("{} {} {} {} {} of {}, {}, line {}", line.claim_ref, line.patient.text,
                            side_of(line.side), line.code, fmt::join(line.modifiers, ";"),
                            iso_text(line.service_date), word(line.submission), line.copy),
                line.quantity, line.charge);
  }
}

void add_invoices(const Clinic& clinic, Entries& entries) {
  for (const InvoiceLine& line : clinic.invoice_lines) {
    if (!entries.holds(line.invoiced_on)) continue;
    const auto key = fmt::format("{} {}, order {}, {}, line {}", line.supplier.text,
                                 line.invoice_ref, line.order_ref, line.item.text, line.copy);
    entries.add(BookEntry::invoice, key, line.quantity, times(line.unit_cost, line.quantity));
    if (line.freight) {
      entries.add(BookEntry::invoice, fmt::format("{}, freight", key), 0, line.freight);
    }
  }
}

void add_receipts(const Clinic& clinic, Entries& entries) {
  for (const OrderLine& line : clinic.order_lines) {
    if (!entries.holds(line.received_on) || line.received_quantity == 0) continue;
    entries.add(BookEntry::receipt,
                fmt::format("{} {}, {}, line {}", line.supplier.text, line.order_ref,
                            line.item.text, line.copy),
                line.received_quantity, times(line.unit_cost, line.received_quantity));
  }
}

void add_payments(const Clinic& clinic, Entries& entries) {
  std::map<std::pair<std::string, std::string>, Date> paid_on;
  for (const Remittance& remittance : clinic.remittances) {
    paid_on[{remittance.payer, remittance.reference}] = remittance.paid_on;
  }
  for (const RemittanceLine& line : clinic.remittance_lines) {
    const auto paid = paid_on.find({line.payer, line.reference});
    if (paid == paid_on.end() || !entries.holds(paid->second)) continue;
    entries.add(BookEntry::payment,
                fmt::format("{} {}, position {}, {} {}", line.payer, line.reference, line.position,
                            line.claim_ref, line.code),
                line.quantity.value_or(0), line.paid);
  }
}

}  // namespace

Date month_of(Date day) {
  const std::chrono::year_month_day parts{day};
  return Date{parts.year() / parts.month() / std::chrono::day{1}};
}

Date month_after(Date month) {
  const std::chrono::year_month_day parts{month};
  return Date{(parts.year() / parts.month() + std::chrono::months{1}) / std::chrono::day{1}};
}

std::vector<ClosedEntry> book_entries(const Clinic& clinic, Date month) {
  Entries entries{month_of(month)};
  add_parts(clinic, entries);
  add_claims(clinic, entries);
  add_invoices(clinic, entries);
  add_receipts(clinic, entries);
  add_payments(clinic, entries);
  return entries.sorted();
}

EntryTotals totals_of(const std::vector<ClosedEntry>& entries) {
  EntryTotals made;
  std::map<std::pair<BookEntry, Currency>, EntryTotal> totals;
  for (const ClosedEntry& entry : entries) {
    if (!entry.amount) {
      ++made.without_amount[entry.entry];
      continue;
    }
    const Currency& currency = entry.amount->currency;
    const auto [at, is_new] = totals.try_emplace(
        {entry.entry, currency}, EntryTotal{entry.entry, currency, 0, 0, {0, currency}});
    EntryTotal& total = at->second;
    ++total.records;
    total.quantity += entry.quantity;
    total.sum = total.sum + *entry.amount;
  }
  for (const auto& [of, total] : totals) made.totals.push_back(total);
  return made;
}

std::optional<Money> BookChange::difference() const {
  if (before && after) {
    if (!before->amount || !after->amount) return std::nullopt;
    if (before->amount->currency != after->amount->currency) return std::nullopt;
    return Money{after->amount->minor - before->amount->minor, after->amount->currency};
  }
  if (after) return after->amount;
  if (before && before->amount) return *before->amount * -1;
  return std::nullopt;
}

ChangesSinceClose changes_since_close(const std::vector<ClosedEntry>& closed,
                                      const std::vector<ClosedEntry>& now) {
  std::map<std::pair<BookEntry, std::string>, BookChange> sides;
  for (const ClosedEntry& entry : closed) sides[{entry.entry, entry.key}].before = entry;
  for (const ClosedEntry& entry : now) sides[{entry.entry, entry.key}].after = entry;
  ChangesSinceClose made;
  for (auto& [known_by, change] : sides) {
    const bool both = change.before && change.after;
    const bool same_quantity = both && change.before->quantity == change.after->quantity;
    if (same_quantity && change.before->amount == change.after->amount) continue;
    const bool is_value_alone = same_quantity && known_by.first == BookEntry::part;
    (is_value_alone ? made.revalued : made.changes).push_back(std::move(change));
  }
  return made;
}

}  // namespace sparewell::billing
