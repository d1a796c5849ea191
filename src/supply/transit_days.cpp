#include "supply/transit_days.hpp"

#include <cmath>
#include <deque>

#include "clinic/place.hpp"

namespace sparewell::supply {
namespace {

struct OnTheWay {
  Date sent;
  int pieces = 0;
};

/// The place where what lies in `way` goes; "" for any other place.
std::string leads_to(const std::string& way) {
  const std::string start = transit_place("").name;
  return way.starts_with(start) ? way.substr(start.size()) : std::string{};
}

/// Where they lie is the one they were carried to in the same breath: see carry (stock_move.hpp).
bool arrives_at(std::span<const StockMovement> movements, std::size_t leaving,
                const std::string& place) {
  if (leaving + 1 >= movements.size()) return false;
  const StockMovement& next = movements[leaving + 1];
  return next.place == place && next.lot == movements[leaving].lot && next.quantity > 0;
}

}  // namespace

TransitDays::TransitDays(std::span<const StockMovement> movements) {
  std::map<std::pair<std::string, Lot>, std::deque<OnTheWay>> under_way;
  for (std::size_t i = 0; i < movements.size(); ++i) {
    const StockMovement& movement = movements[i];
    const std::string to = leads_to(movement.place);
    if (to.empty()) continue;
    auto& queue = under_way[{to, movement.lot}];
    if (movement.quantity > 0) {
      queue.push_back({movement.on, movement.quantity});
      continue;
    }
    const bool arrived = arrives_at(movements, i, to);
    int left = -movement.quantity;
    while (left > 0 && !queue.empty()) {
      OnTheWay& first = queue.front();
      const int took = std::min(left, first.pieces);
      const int days = days_between(first.sent, movement.on);
      if (arrived && days >= 0) {
        for (Record* record : {&all_, &by_place_[to]}) {
          ++record->arrived;
          record->days += days;
        }
      }
      left -= took;
      first.pieces -= took;
      if (first.pieces == 0) queue.pop_front();
    }
  }
}

const TransitDays::Record& TransitDays::record_of(const std::string& place) const {
  const auto found = by_place_.find(place);
  return found == by_place_.end() ? all_ : found->second;
}

int TransitDays::to(const std::string& place) const {
  const Record& record = record_of(place);
  if (record.arrived == 0) return assumed_transit_days;
  return static_cast<int>(std::floor(static_cast<double>(record.days) / record.arrived + 0.5));
}

int TransitDays::seen(const std::string& place) const {
  return record_of(place).arrived;
}

}  // namespace sparewell::supply
