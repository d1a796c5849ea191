/// Works out courses of a day's items, away from the window.
#pragma once

#include <memory>
#include <optional>
#include <unordered_map>
#include <vector>

#include "desk/day.hpp"
#include "desk/stock_picture.hpp"

namespace sparewell::desk {

/// Keeps what it worked out. One thread at a time.
class CourseBench {
 public:
  explicit CourseBench(DayPtr day) : day_{std::move(day)} {}
  /// nullptr when the catalogue has no such item. The first course of a large clinic takes longer.
  [[nodiscard]] ItemCoursePtr of(const ItemCode& item);

 private:
  DayPtr day_;
  std::vector<wear::LifeOfUnit> lives_;
  std::optional<supply::ItemCourses> courses_;
  std::unordered_map<ItemCode, ItemCoursePtr> known_;
};

}  // namespace sparewell::desk
