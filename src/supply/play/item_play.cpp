#include "supply/play/item_play.hpp"

#include <algorithm>
#include <deque>
#include <stdexcept>

#include "supply/policy.hpp"

namespace sparewell::supply::play {
namespace {

struct FreshLot {
  Date use_by;
  int pieces = 0;
};

struct Arrival {
  Date day;
  int pieces = 0;
};

struct Waiting {
  Date since;
  int pieces = 0;
};

class ItemPlay {
 public:
  ItemPlay(const ItemWorld& world, const ItemRule& rule, std::vector<PlacedOrder>* placed)
      : world_{world}, rule_{rule}, placed_{placed} {
    if (world.lead_days.size() != world.order_days.size() ||
        (rule.levels.size() != 1 && rule.levels.size() != world.order_days.size())) {
      throw std::invalid_argument{"Levels and lead times must match the order days."};
    }
    put_on_shelf(world.start, rule.opening);
  }

  ItemCounts run() {
    std::size_t request = 0;
    std::size_t order = 0;
    for (Date day = world_.start; day <= world_.end; day += days{1}) {
      receive(day);
      throw_away(day);
      for (; request < world_.requests.size() && world_.requests[request].day <= day; ++request) {
        // What was asked for before the play began is not part of it.
        if (world_.requests[request].day == day) serve(world_.requests[request]);
      }
      if (order < world_.order_days.size() && world_.order_days[order] == day) {
        place_order(day, order);
        ++order;
      }
      if (!counted(day)) continue;
      ++counts_.days;
      counts_.stock_days += on_hand_;
      counts_.waiting_days += waited_for_;
    }
    for (const Waiting& one : waiting_) end_wait(one, world_.end);
    return counts_;
  }

 private:
  [[nodiscard]] bool counted(Date day) const { return day >= world_.counted_from; }

  void put_on_shelf(Date day, int pieces) {
    if (pieces <= 0) return;
    on_hand_ += pieces;
    if (world_.item->shelf_life_days) {
      lots_.push_back({day + days{*world_.item->shelf_life_days}, pieces});
    }
  }

  /// The first to expire goes first; lots stand in the order in which they came.
  void take(int pieces) {
    on_hand_ -= pieces;
    while (pieces > 0 && !lots_.empty()) {
      const int taken = std::min(pieces, lots_.front().pieces);
      lots_.front().pieces -= taken;
      pieces -= taken;
      if (lots_.front().pieces == 0) lots_.pop_front();
    }
  }

  void receive(Date day) {
    while (!coming_.empty() && coming_.front().day <= day) {
      on_order_ -= coming_.front().pieces;
      put_on_shelf(day, coming_.front().pieces);
      coming_.pop_front();
    }
    while (!waiting_.empty() && on_hand_ > 0) {
      Waiting& first = waiting_.front();
      const int given = std::min(first.pieces, on_hand_);
      take(given);
      waited_for_ -= given;
      first.pieces -= given;
      if (first.pieces > 0) break;
      end_wait(first, day);
      waiting_.pop_front();
    }
  }

  void end_wait(const Waiting& one, Date day) {
    if (!counted(one.since)) return;
    const int waited = days_between(one.since, day);
    counts_.waited_days += waited;
    counts_.longest_wait = std::max(counts_.longest_wait, waited);
  }

  void throw_away(Date day) {
    while (!lots_.empty() && lots_.front().use_by < day) {
      if (counted(day)) counts_.expired += lots_.front().pieces;
      on_hand_ -= lots_.front().pieces;
      lots_.pop_front();
    }
  }

  void serve(const Request& request) {
    const int given = std::min(request.pieces, on_hand_);
    const int missing = request.pieces - given;
    take(given);
    if (counted(request.day)) {
      counts_.pieces += request.pieces;
      counts_.served_at_once += given;
      ++counts_.requests;
      if (missing > 0) ++counts_.kept_waiting;
      if (missing > 0 && missing > arriving_soon(request.day) - waited_for_) ++counts_.rush;
    }
    if (missing == 0) return;
    waiting_.push_back({request.day, missing});
    waited_for_ += missing;
  }

  [[nodiscard]] int arriving_soon(Date day) const {
    int pieces = 0;
    for (const Arrival& arrival : coming_) {
      if (arrival.day <= day + days{rush_days}) pieces += arrival.pieces;
    }
    return pieces;
  }

  [[nodiscard]] int counting_stock(Date day) const {
    if (!rule_.counts_lasting) return on_hand_;
    int pieces = on_hand_;
    for (const FreshLot& lot : lots_) {
      if (lot.use_by >= day + days{*rule_.counts_lasting}) break;
      pieces -= lot.pieces;
    }
    return pieces;
  }

  void place_order(Date day, std::size_t order) {
    const Levels& levels = rule_.levels[rule_.levels.size() == 1 ? 0 : order];
    const int position = counting_stock(day) + on_order_ - waited_for_;
    if (position > levels.order_at || position >= levels.order_to) return;
    const int quantity = order_quantity(*world_.item, levels.order_to - position);
    if (placed_ != nullptr && counted(day)) placed_->push_back({day, quantity});
    const Arrival arrival{day + days{world_.lead_days[order]}, quantity};
    coming_.insert(std::ranges::upper_bound(coming_, arrival.day, {}, &Arrival::day), arrival);
    on_order_ += quantity;
    if (world_.lead_days[order] == 0) receive(day);
  }

  const ItemWorld& world_;
  const ItemRule& rule_;
  std::vector<PlacedOrder>* placed_;
  std::deque<FreshLot> lots_;    ///< only of items that expire
  std::deque<Arrival> coming_;   ///< by day
  std::deque<Waiting> waiting_;  ///< first come, first served
  int on_hand_ = 0;
  int on_order_ = 0;
  int waited_for_ = 0;
  ItemCounts counts_;
};

}  // namespace

ItemCounts play_item(const ItemWorld& world, const ItemRule& rule,
                     std::vector<PlacedOrder>* placed) {
  return ItemPlay{world, rule, placed}.run();
}

int steady_stock(const Item& item, const Levels& levels, double share) {
  const int least = levels.order_at + 1;
  const int spread = order_quantity(item, std::max(1, levels.order_to - levels.order_at));
  const int above = std::min(static_cast<int>(share * spread), spread - 1);
  return std::max(0, least + above);
}

}  // namespace sparewell::supply::play
