#include <algorithm>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/order_changes.hpp"
#include "desk/order_revisions.hpp"
#include "desk/order_words.hpp"
#include "desk/wording.hpp"
#include "supply/policy.hpp"

namespace sparewell::desk {
namespace {

using store::UnitOfWork;
using supply::OrderStage;

std::string pieces_words(int count) {
  return count_words(count, "piece", "pieces");
}

/// Works on the order inside the unit of work; whoever called it commits or lets go.
class Amending {
 public:
  Amending(UnitOfWork& work, StoredOrder& stored, const Desk& desk, bool draft)
      : work_{work}, stored_{stored}, desk_{desk}, draft_{draft} {}

  Expected<void> take(const LineAmendment& wanted) {
    const auto at = find_line(wanted);
    if (!at) return tl::unexpected(at.error());
    if (wanted.drop) return drop(*at, wanted);
    if (!wanted.quantity && !wanted.promised) {
      return refuse(say("Say what is to change on the line of {}.", wanted.item.text));
    }
    if (wanted.quantity) {
      if (auto done = set_quantity(*at, wanted); !done) return done;
    }
    return wanted.promised ? set_promise(wanted) : Expected<void>{};
  }

  /// "L-1: 3 instead of 5 pieces" and so on.
  [[nodiscard]] const std::vector<std::string>& done() const { return done_; }

 private:
  using Found = std::optional<std::size_t>;

  /// The line that is meant; none when one is to be added.
  Expected<Found> find_line(const LineAmendment& wanted) const {
    std::vector<std::size_t> answering;
    Found settled;
    const auto& lines = stored_.order.lines;
    for (std::size_t i = 0; i < lines.size(); ++i) {
      if (lines[i].item != wanted.item) continue;
      if (wanted.copy != 0 && lines[i].copy != wanted.copy) continue;
      if (lines[i].state == OrderState::cancelled) {
        settled = i;
      } else {
        answering.push_back(i);
      }
    }
    if (answering.size() > 1) {
      return refuse(say("Order {} has {} lines for {}; say which copy is meant.", stored_.order.ref,
                        answering.size(), wanted.item.text));
    }
    if (!answering.empty()) return Found{answering.front()};
    return wanted.quantity ? settled : Found{};
  }

  tl::unexpected<Refusal> refuse_no_line(const LineAmendment& wanted) const {
    return refuse(say("Order {} has no open line for {}; check the item.", stored_.order.ref,
                      wanted.item.text));
  }

  Expected<void> drop(Found at, const LineAmendment& wanted) {
    if (!at) return refuse_no_line(wanted);
    OrderLine line = stored_.order.lines[*at];
    const int came = line.received_quantity;
    if (came >= line.quantity) {
      return refuse(say("All {} of {} have come; nothing of the line is left to cancel.",
                        pieces_words(line.quantity), line.item.text));
    }
    if (came > 0) {
      line.quantity = came;
      done_.push_back(
          say("{}: the rest was cancelled, {} had come", line.item.text, pieces_words(came)));
    } else {
      line.state = OrderState::cancelled;
      done_.push_back(say("{}: dropped", line.item.text));
    }
    keep_line(work_, stored_, *at, line);
    return {};
  }

  Expected<void> set_quantity(Found at, const LineAmendment& wanted) {
    const int quantity = *wanted.quantity;
    if (quantity < 1) {
      return refuse(say("Order at least one piece of {}, or drop its line.", wanted.item.text));
    }
    if (!at) return add(wanted, quantity);
    OrderLine line = stored_.order.lines[*at];
    if (quantity < line.received_quantity) {
      return refuse(say_n("{} of {} has come already; the line cannot be made smaller than that.",
                          "{} of {} have come already; the line cannot be made smaller than that.",
                          static_cast<unsigned long>(line.received_quantity),
                          pieces_words(line.received_quantity), line.item.text));
    }
    if (line.state == OrderState::cancelled) {
      done_.push_back(say("{}: {} added", line.item.text, pieces_words(quantity)));
      line.state = draft_ ? OrderState::draft : OrderState::placed;
    } else {
      done_.push_back(say("{}: {} instead of {}", line.item.text, pieces_words(quantity),
                          number_words(line.quantity)));
    }
    line.quantity = quantity;
    keep_line(work_, stored_, *at, line);
    return {};
  }

  Expected<void> add(const LineAmendment& wanted, int quantity) {
    const auto item = work_.item(wanted.item);
    if (!item) {
      return refuse(say("The catalogue has no item '{}'; check the code.", wanted.item.text));
    }
    OrderLine line;
    line.supplier = stored_.order.supplier;
    line.order_ref = stored_.order.ref;
    line.item = wanted.item;
    line.ordered_on = draft_ ? stored_.order.lines.front().ordered_on : desk_.today;
    line.quantity = quantity;
    line.unit_cost = supply::unit_cost_at(item->record, quantity);
    line.state = draft_ ? OrderState::draft : OrderState::placed;
    line.copy = std::max(1, wanted.copy);
    add_line(work_, stored_, line);
    done_.push_back(say("{}: {} added", line.item.text, pieces_words(quantity)));
    return {};
  }

  Expected<void> set_promise(const LineAmendment& wanted) {
    const auto at = find_line(wanted);
    if (!at) return tl::unexpected(at.error());
    if (!*at) return refuse_no_line(wanted);
    const OrderLine& line = stored_.order.lines[**at];
    const auto* before = stored_.order.promise(line);
    keep_promise(work_, stored_,
                 {line.supplier, line.order_ref, line.item, line.copy, wanted.promised,
                  before != nullptr && before->on_back_order});
    done_.push_back(say("{}: promised for {}", line.item.text, date_words(*wanted.promised)));
    return {};
  }

  UnitOfWork& work_;
  StoredOrder& stored_;
  const Desk& desk_;
  bool draft_;
  std::vector<std::string> done_;
};

Expected<void> approve_amended(UnitOfWork& work, StoredOrder& stored, const Amendment& amendment,
                               Date today) {
  const auto limit = work.settings().approval_above;
  if (!amendment.approved_by.empty()) {
    keep_header(work, stored, approved_header(work, stored.order, amendment.approved_by, today));
  } else if (supply::needs_approval(stored.order.lines, stored.order.header, limit)) {
    return refuse(
        say("With this change {} Name who approved it.", worth_sentence(stored.order, *limit)));
  }
  return {};
}

Expected<StoredOrder> open_order(const UnitOfWork& work, const OrderName& name, OrderStage& stage) {
  auto stored = find_order(work, name);
  if (!stored) return stored;
  stage = supply::stage_of(stored->order, work.settings().approval_above);
  if (stage == OrderStage::cancelled || stage == OrderStage::received) {
    return refuse(say("Order {} is {} and can no longer be changed; place a new one.", name.ref,
                      stage_words(stage)));
  }
  return stored;
}

OrderChanged changed(const OrderName& name, const std::vector<std::string>& done, bool draft,
                     int revision) {
  return {draft ? say("Draft {} was changed. {}.", name.ref, list_words(done))
                : say("Order {} is now revision {}. {}. Send the supplier the new "
                      "workbook.",
                      name.ref, revision, list_words(done)),
          revision};
}

}  // namespace

Expected<OrderChanged> amend_order(store::Store& store, const OrderName& name,
                                   const Amendment& amendment, const Desk& desk) {
  if (amendment.lines.empty()) return refuse(say("Say which line is to change, and how."));
  const auto work =
      store.begin_write({desk.who, fmt::format("order {} amended: {}", name.ref, amendment.why)});
  OrderStage stage{};
  auto stored = open_order(*work, name, stage);
  if (!stored) return tl::unexpected(stored.error());
  const bool draft = stage == OrderStage::draft || stage == OrderStage::waiting_for_approval;
  if (!draft && amendment.why.empty()) {
    return refuse(say("Say why the order is changed: the reason is kept with the revision."));
  }
  if (!draft) keep_first_revision(*work, *stored, desk.today);
  Amending amending{*work, *stored, desk, draft};
  for (const auto& line : amendment.lines) {
    if (const auto taken = amending.take(line); !taken) return tl::unexpected(taken.error());
  }
  if (draft) {
    if (!amendment.approved_by.empty()) {
      keep_header(*work, *stored,
                  approved_header(*work, stored->order, amendment.approved_by, desk.today));
    }
  } else {
    const auto approved = approve_amended(*work, *stored, amendment, desk.today);
    if (!approved) return tl::unexpected(approved.error());
    keep_next_revision(*work, *stored, desk.today, desk.who, amendment.why);
  }
  work->commit();
  return changed(name, amending.done(), draft, header_of(stored->order).revision);
}

Expected<OrderChanged> back_order(store::Store& store, const OrderName& name, const ItemCode& item,
                                  std::optional<Date> until, const std::string& why,
                                  const Desk& desk) {
  if (until && *until < desk.today) {
    return refuse(
        say("{} has passed; give the day that the supplier has promised.", date_words(*until)));
  }
  const auto work =
      store.begin_write({desk.who, fmt::format("order {}: {} on back-order", name.ref, item.text)});
  OrderStage stage{};
  auto stored = open_order(*work, name, stage);
  if (!stored) return tl::unexpected(stored.error());
  if (stage == OrderStage::draft || stage == OrderStage::waiting_for_approval) {
    return refuse(say("Order {} was not placed yet; a supplier owes nothing of it.", name.ref));
  }
  keep_first_revision(*work, *stored, desk.today);
  bool found = false;
  for (const auto& line : stored->order.lines) {
    if (line.item != item || line.outstanding() == 0) continue;
    found = true;
    keep_promise(*work, *stored,
                 {line.supplier, line.order_ref, line.item, line.copy, until, true});
  }
  if (!found) {
    return refuse(say("Nothing of {} is still to come on order {}.", item.text, name.ref));
  }
  const auto words = until ? say("on back-order until {}", date_words(*until))
                           : std::string{said("on back-order, no day promised")};
  keep_next_revision(*work, *stored, desk.today, desk.who,
                     why.empty() ? fmt::format("{} {}", item.text, words) : why);
  work->commit();
  const int revision = stored->order.header->revision;
  return OrderChanged{
      say("The rest of {} on order {} is {} (revision {}).", item.text, name.ref, words, revision),
      revision};
}

}  // namespace sparewell::desk
