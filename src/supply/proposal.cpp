#include "supply/proposal.hpp"

#include <algorithm>
#include <tuple>

#include "clinic/in_parallel.hpp"
#include "supply/patient_order.hpp"
#include "supply/stocked_line.hpp"

namespace sparewell::supply {

std::vector<ProposalLine> propose(const Clinic& clinic, const std::vector<wear::LifeOfUnit>& lives,
                                  Date today) {
  const ClinicIndex index{clinic};
  const StockBook book{clinic};
  const LeadTimes lead_times{clinic};
  const auto by_item = lives_by_item(clinic, lives);
  const auto changes = changes_to_items(clinic, by_item, today);
  FreshCountsCache fresh;
  std::vector<std::optional<ProposalLine>> of_items(clinic.items.size());
  in_parallel(clinic.items.size(), [&](std::size_t i) {
    const Item& item = clinic.items[i];
    const ItemCase given =
        item_case(clinic, item, index.supplier(item.supplier), of_item(by_item, item.code),
                  of_item(changes, item.code), book, fresh, lead_times.of(item), today);
    of_items[i] = item.stocked ? stocked_line(given) : patient_order_line(given);
  });
  std::vector<ProposalLine> lines;
  for (auto& line : of_items) {
    if (line) lines.push_back(std::move(*line));
  }
  std::ranges::sort(lines, {}, [](const ProposalLine& l) { return std::tie(l.supplier, l.item); });
  return lines;
}

}  // namespace sparewell::supply
