/// Whether an item goes together with what the patient wears on that side.
#pragma once

#include <vector>

#include "care/gravity.hpp"
#include "care/worn.hpp"

namespace sparewell::care {

enum class Mismatch {
  thread_differs,      ///< from that of `other`
  thread_not_stated,   ///< of the item or of `other`, so that it cannot be compared
  liner_not_for_this,  ///< a liner of another attachment than the suspension holds by
  not_in_suspension    ///< a part that has no work in this suspension
};

struct AttachmentFinding {
  Mismatch mismatch = Mismatch::thread_differs;
  const Item* other = nullptr;  ///< what it was compared with; nullptr for the suspension
};

/// Each a thing to look at: the patient may be about to change the whole set.
/// A pin, its lock and the locking liner carry one thread; pin and lanyard hold by a locking liner,
/// a sleeve by a cushion liner, suction and vacuum by a cushion liner with a sleeve or a liner with
/// seal (common practice, no source). Points into what `worn` points into.
[[nodiscard]] std::vector<AttachmentFinding> check_attachment(const Item& item, const Worn& worn);

}  // namespace sparewell::care
