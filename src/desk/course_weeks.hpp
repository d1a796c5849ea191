/// What one week of an item's course says; for its picture and its table.
#pragma once

#include <string>
#include <vector>

#include "desk/picture/picture.hpp"
#include "supply/item_course.hpp"

namespace sparewell::desk {

/// The stock at the end of that day of the course, and what happens until the next.
[[nodiscard]] std::string week_words(const supply::ItemCourse& course, std::size_t week);
[[nodiscard]] picture::FigureTable course_table(const supply::ItemCourse& course);
/// The point of that day; the last one when there is none.
[[nodiscard]] const supply::CoursePoint& find_week(const std::vector<supply::CoursePoint>& points,
                                                   Date on);

/// No piece is there or coming: that nothing is left is no news then, and whether somebody waits
/// is.
[[nodiscard]] inline bool nothing_there(const supply::ItemCourse& course) {
  return course.there == 0 && course.coming.empty();
}

}  // namespace sparewell::desk
