/// What the page "Deliveries" has done in the clinic file. Each opens a Store of its own and is
/// short enough to be waited for; each throws what the store or the file system throws.
#pragma once

#include <filesystem>
#include <functional>

#include "desk/clinic_jobs.hpp"
#include "desk/order_changes.hpp"
#include "desk/order_revisions.hpp"
#include "desk/receiving.hpp"

namespace sparewell::desk {

/// Does one of the changes of desk/order_changes.
using OrderChange = std::function<Expected<OrderChanged>(store::Store&, const Desk&)>;
[[nodiscard]] Expected<OrderChanged> change_order(const ClinicFile& file,
                                                  const OrderChange& change);

[[nodiscard]] Expected<ReceivingOutcome> book_delivery(const ClinicFile& file,
                                                       const ReceivingRequest& request);

/// The oldest first; none for an order that keeps none.
[[nodiscard]] std::vector<KeptRevision> read_revisions(const ClinicFile& file,
                                                       const OrderName& name);

[[nodiscard]] Expected<ReprintedOrder> write_again(const ClinicFile& file, const OrderName& name,
                                                   int revision,
                                                   const std::filesystem::path& folder);

}  // namespace sparewell::desk
