#include "supply/supplier_record.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "supply/lead_time.hpp"

namespace sparewell::supply {
namespace {

struct Receipts {
  SupplierRecord record;
  std::vector<int> late_by;  ///< days; negative when early
  double quoted = 0;
  double taken = 0;
};

bool runs_late(const std::vector<int>& late_by) {
  const auto count = static_cast<double>(late_by.size());
  if (late_by.size() < static_cast<std::size_t>(least_receipts)) return false;
  double mean = 0;
  for (const int days : late_by) mean += days / count;
  double squares = 0;
  for (const int days : late_by) squares += (days - mean) * (days - mean);
  return mean > 1.645 * std::sqrt(squares / (count - 1) / count) && mean > 0;
}

SupplierRecord summed_up(Receipts& of) {
  SupplierRecord& record = of.record;
  record.receipts = static_cast<int>(of.late_by.size());
  if (of.late_by.empty()) return record;
  record.quoted_days = of.quoted / record.receipts;
  record.taken_days = of.taken / record.receipts;
  record.late = static_cast<int>(std::ranges::count_if(of.late_by, [](int d) { return d > 0; }));
  std::ranges::sort(of.late_by);
  const auto rank = static_cast<std::size_t>(std::ceil(0.9 * record.receipts)) - 1;
  record.nine_in_ten_days_late = of.late_by[rank];
  record.runs_late = runs_late(of.late_by);
  return record;
}

}  // namespace

std::vector<SupplierRecord> supplier_records(const Clinic& clinic, Date today) {
  const ClinicIndex index{clinic};
  std::map<SupplierName, Receipts> suppliers;
  for (const OrderLine& line : clinic.order_lines) {
    const Item* item = index.item(line.item);
    if (line.state != OrderState::placed || item == nullptr || line.ordered_on > today) continue;
    Receipts& of = suppliers[line.supplier];
    const int quoted = item->lead_days.value_or(assumed_lead_days);
    if (line.outstanding() > 0) {
      ++of.record.open_lines;
      if (line.ordered_on + days{quoted} < today) ++of.record.overdue_lines;
    } else if (line.received_on && *line.received_on > today - days{record_days}) {
      const int taken = days_between(line.ordered_on, *line.received_on);
      if (taken < 0) continue;  // received before it was ordered: a mistake in the record
      of.late_by.push_back(taken - quoted);
      of.quoted += quoted;
      of.taken += taken;
    }
  }
  std::vector<SupplierRecord> made;
  for (auto& [name, of] : suppliers) {
    of.record.supplier = name;
    if (of.late_by.empty() && of.record.open_lines == 0) continue;
    made.push_back(summed_up(of));
  }
  std::ranges::stable_sort(made, std::ranges::greater{}, &SupplierRecord::runs_late);
  return made;
}

}  // namespace sparewell::supply
