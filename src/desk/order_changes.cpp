#include "desk/order_changes.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/order_revisions.hpp"
#include "desk/order_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using store::UnitOfWork;
using supply::OrderStage;

tl::unexpected<Refusal> refuse_stage(const std::string& ref, OrderStage stage,
                                     std::string_view what_to_do) {
  return refuse(say("Order {} is {}: {}", ref, stage_words(stage), what_to_do));
}

bool is_draft(OrderStage stage) {
  return stage == OrderStage::draft || stage == OrderStage::waiting_for_approval;
}

OrderStage stage_in(const UnitOfWork& work, const supply::Order& order) {
  return supply::stage_of(order, work.settings().approval_above);
}

void settle_lines(UnitOfWork& work, StoredOrder& stored) {
  for (std::size_t i = 0; i < stored.order.lines.size(); ++i) {
    OrderLine line = stored.order.lines[i];
    if (line.state == OrderState::cancelled) continue;
    if (line.received_quantity > 0) {
      line.quantity = std::min(line.quantity, line.received_quantity);
    } else {
      line.state = OrderState::cancelled;
    }
    keep_line(work, stored, i, line);
  }
}

Expected<OrderChanged> cancel(UnitOfWork& work, const OrderName& name, const std::string& why,
                              const Desk& desk) {
  auto stored = find_order(work, name);
  if (!stored) return tl::unexpected(stored.error());
  const auto stage = stage_in(work, stored->order);
  if (stage == OrderStage::cancelled || stage == OrderStage::received) {
    return refuse_stage(name.ref, stage, said("nothing of it is left to cancel."));
  }
  const int came = stored->order.received();
  if (!is_draft(stage)) keep_first_revision(work, *stored, desk.today);
  settle_lines(work, *stored);
  auto header = header_of(stored->order);
  header.cancelled_on = desk.today;
  header.cancelled_why = why;
  keep_header(work, *stored, header);
  if (!is_draft(stage)) {
    keep_next_revision(work, *stored, desk.today, desk.who, fmt::format("cancelled: {}", why));
  }
  std::string sentence = say("Order {} was cancelled", name.ref);
  if (came > 0) {
    sentence += say_n("; {} piece had come and stays", "; {} pieces had come and stay",
                      static_cast<unsigned long>(came), number_words(came));
  }
  if (!is_draft(stage)) sentence += said("; tell the supplier");
  return OrderChanged{sentence + ".", header_of(stored->order).revision};
}

}  // namespace

Expected<OrderChanged> approve_order(store::Store& store, const OrderName& name,
                                     const std::string& approved_by, const Desk& desk) {
  if (approved_by.empty()) return refuse(say("Name the person who approves the order."));
  const auto work = store.begin_write({desk.who, fmt::format("order {} approved", name.ref)});
  auto stored = find_order(*work, name);
  if (!stored) return tl::unexpected(stored.error());
  const auto stage = stage_in(*work, stored->order);
  if (!is_draft(stage)) {
    return refuse_stage(name.ref, stage,
                        said("only an order that was not placed can be approved."));
  }
  auto header = approved_header(*work, stored->order, approved_by, desk.today);
  keep_header(*work, *stored, header);
  work->commit();
  return OrderChanged{
      say("{} approved order {} at {}.", approved_by, name.ref, approved_sum_words(header)),
      header.revision};
}

Expected<OrderChanged> place_order(UnitOfWork& work, const OrderName& name, const Desk& desk) {
  auto stored = find_order(work, name);
  if (!stored) return tl::unexpected(stored.error());
  const auto stage = stage_in(work, stored->order);
  if (stage == OrderStage::waiting_for_approval) {
    return refuse(waiting_sentence(stored->order, *work.settings().approval_above));
  }
  if (stage != OrderStage::draft) {
    return refuse_stage(name.ref, stage, said("only a draft can be placed."));
  }
  int pieces = 0;
  for (std::size_t i = 0; i < stored->order.lines.size(); ++i) {
    OrderLine line = stored->order.lines[i];
    if (line.state != OrderState::draft) continue;
    line.state = OrderState::placed;
    pieces += line.quantity;
    keep_line(work, *stored, i, line);
  }
  auto header = header_of(stored->order);
  header.placed_on = desk.today;
  keep_header(work, *stored, header);
  keep_revision(work, *stored, desk.today, desk.who, to_say("placed"));
  return OrderChanged{say_n("Order {} of {} was placed: {} piece is on order.",
                            "Order {} of {} was placed: {} pieces are on order.",
                            static_cast<unsigned long>(pieces), name.ref,
                            stored->order.supplier.text, number_words(pieces)),
                      header.revision};
}

Expected<OrderChanged> place_order(store::Store& store, const OrderName& name, const Desk& desk) {
  const auto work = store.begin_write({desk.who, fmt::format("order {} placed", name.ref)});
  auto made = place_order(*work, name, desk);
  if (made) work->commit();
  return made;
}

Expected<OrderChanged> cancel_order(store::Store& store, const OrderName& name,
                                    const std::string& why, const Desk& desk) {
  if (why.empty()) return refuse(say("Say why the order is cancelled."));
  const auto work =
      store.begin_write({desk.who, fmt::format("order {} cancelled: {}", name.ref, why)});
  auto made = cancel(*work, name, why, desk);
  if (made) work->commit();
  return made;
}

}  // namespace sparewell::desk
