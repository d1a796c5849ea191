/// What a finding rests on: the records of both sides, a line each.
#pragma once

#include <string>
#include <vector>

#include "billing/finding.hpp"

namespace sparewell::desk {

struct SideOfBooks {
  std::string title;               ///< "Handed out", "Billed", "Ordered and received" ...
  std::vector<std::string> lines;  ///< one record each
  std::string empty;               ///< what stands there when there is none
};

struct BothSides {
  SideOfBooks ours;
  SideOfBooks theirs;
};

[[nodiscard]] BothSides both_sides(const Clinic& clinic, const billing::BillingFinding& finding);

// One record in one line, as the sides show it.
[[nodiscard]] std::string record_line(const Unit& unit);
[[nodiscard]] std::string record_line(const ClaimLine& line);
[[nodiscard]] std::string record_line(const RemittanceLine& line);
[[nodiscard]] std::string record_line(const OrderLine& line);
[[nodiscard]] std::string record_line(const InvoiceLine& line);
[[nodiscard]] std::string record_line(const SupplierReturn& sent);

}  // namespace sparewell::desk
