/// What the search says about what it has found, and where each hit leads.
#pragma once

#include "desk/search/search_index.hpp"

namespace sparewell::desk {

// `position` is that in the clinic's list of the kind.
[[nodiscard]] Hit patient_hit(const Day& day, std::size_t position);
[[nodiscard]] Hit part_hit(const Day& day, std::size_t position);
[[nodiscard]] Hit item_hit(const Day& day, std::size_t position);
[[nodiscard]] Hit lot_hit(const Day& day, std::size_t position);
[[nodiscard]] Hit order_hit(const Day& day, std::size_t position);
/// Leads to the patient whose claim it is.
[[nodiscard]] Hit claim_hit(const Day& day, std::size_t position);
/// Leads to the order that it names, otherwise to billing.
[[nodiscard]] Hit invoice_hit(const Day& day, std::size_t position);

}  // namespace sparewell::desk
