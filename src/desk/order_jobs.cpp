#include "desk/order_jobs.hpp"

#include "clinic/say.hpp"

namespace sparewell::desk {

Expected<OrderChanged> change_order(const ClinicFile& file, const OrderChange& change) {
  const auto store = open_store(file);
  return change(*store, {file.today, file.who});
}

Expected<ReceivingOutcome> book_delivery(const ClinicFile& file, const ReceivingRequest& request) {
  const auto store = open_store(file);
  return receive_delivery(*store, request, file.today,
                          {file.who, to_say("a delivery was received")});
}

std::vector<KeptRevision> read_revisions(const ClinicFile& file, const OrderName& name) {
  const auto store = open_store(file);
  const auto snapshot = store->read();
  const auto stored = find_order(*snapshot, name);
  return stored ? revisions_of(*snapshot, stored->order) : std::vector<KeptRevision>{};
}

Expected<ReprintedOrder> write_again(const ClinicFile& file, const OrderName& name, int revision,
                                     const std::filesystem::path& folder) {
  const auto store = open_store(file);
  return reprint_order(*store->read(), name, revision, folder);
}

}  // namespace sparewell::desk
