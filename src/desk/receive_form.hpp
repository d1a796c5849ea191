/// A delivery as it is scanned and typed at the bench.
#pragma once

#include <string>
#include <vector>

#include "clinic/item.hpp"
#include "desk/receiving.hpp"

namespace sparewell::desk {

struct ReceiveForm {
  std::string order_ref;  ///< "" to look for the order by the item
  std::string supplier;
  std::string item;
  std::string lot;
  std::string use_by;    ///< "2028-06-30", or empty
  std::string serials;   ///< "S1,S2"
  std::string quantity;  ///< "3"
  std::string damaged;   ///< "1", or empty for none
  std::string damage;
  std::string damaged_serials;  ///< "S3,S4"
  std::string place;
  bool not_replaced = false;
  bool accept_extra = false;
  bool without_use_by = false;
  bool accept_serial = false;
};

/// The form with what one scan says: item, lot, use-by date, serial number, and quantity where the
/// label tells it. A further package of the same item and lot adds to the quantity. Refuses a label
/// that cannot be read, and one of another item or lot than the form has: that is booked by itself.
struct Scanned {
  ReceiveForm form;
  std::string doubt;  ///< one sentence when a person must compare the label; else ""
};
[[nodiscard]] Expected<Scanned> with_scan(ReceiveForm form, const std::string& scan,
                                          const std::vector<Item>& catalogue, Date today);

/// Refuses, naming the field: what is missing or is no number or day.
[[nodiscard]] Expected<ReceivingRequest> read_receive_form(const ReceiveForm& form);

/// The form for the next package of the same delivery.
[[nodiscard]] ReceiveForm next_form(const ReceiveForm& form);

}  // namespace sparewell::desk
