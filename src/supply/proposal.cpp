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
  const ClinicDemand demand{clinic, lives, today};
  std::vector<std::optional<ProposalLine>> of_items(clinic.items.size());
  in_parallel(clinic.items.size(), [&](std::size_t i) {
    const Item& item = clinic.items[i];
    const ItemCase given =
        item_case(clinic, item, index.supplier(item.supplier), demand, book, lead_times.of(item));
    of_items[i] = item.stocked ? stocked_line(given) : patient_order_line(given);
  });
  std::vector<ProposalLine> lines;
  for (auto& line : of_items) {
    if (line) lines.push_back(std::move(*line));
  }
  std::ranges::sort(lines, {}, [](const ProposalLine& l) { return std::tie(l.supplier, l.item); });
  return lines;
}

Pmf demand(const Clinic& clinic, const std::vector<wear::LifeOfUnit>& lives, const ItemCode& item,
           Date today, int days_ahead) {
  const ClinicIndex index{clinic};
  const Item* known = index.item(item);
  if (known == nullptr) return Pmf{};
  return ClinicDemand{clinic, lives, today}.of(*known).until(today + days{days_ahead});
}

}  // namespace sparewell::supply
