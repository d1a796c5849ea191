#include "desk/draft_orders.hpp"

#include <algorithm>

#include "clinic/say.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {

std::vector<DraftOrder> draft_orders(const Clinic& clinic) {
  std::vector<DraftOrder> drafts;
  for (const auto& line : clinic.order_lines) {
    if (line.state != OrderState::draft) continue;
    auto draft = std::ranges::find(drafts, line.order_ref, &DraftOrder::number);
    if (draft == drafts.end()) {
      drafts.push_back({line.order_ref, line.supplier, line.ordered_on, 0, 0});
      draft = drafts.end() - 1;
    }
    ++draft->lines;
    draft->pieces += line.quantity;
  }
  return drafts;
}

std::string draft_words(const DraftOrder& draft) {
  return say("{}, {}: {}, {}, written {}", draft.number, draft.supplier.text,
             count_words(draft.lines, "line", "lines"),
             count_words(draft.pieces, "piece", "pieces"), date_words(draft.written_on));
}

}  // namespace sparewell::desk
