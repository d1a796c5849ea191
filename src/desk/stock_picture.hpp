/// The stock of one item over the months ahead as a picture: bands, middle, order-up-to level,
/// arrivals, losses and order days.
#pragma once

#include <memory>
#include <string>

#include "desk/picture/picture.hpp"
#include "supply/item_course.hpp"

namespace sparewell::desk {

using ItemCoursePtr = std::shared_ptr<const supply::ItemCourse>;

/// One stop a week, its id the day as "2026-12-02".
[[nodiscard]] picture::Maker stock_picture(ItemCoursePtr course);

/// In the place of a picture while there is none.
[[nodiscard]] picture::Maker words_as_picture(std::string words);

/// What the course says, in a few sentences.
[[nodiscard]] std::string course_words(const supply::ItemCourse& course);

/// When the stock may run out, in one sentence.
[[nodiscard]] std::string runs_out_words(const supply::ItemCourse& course);
/// The same with today's order; "" where nothing of it is ordered today.
[[nodiscard]] std::string runs_out_with_order_words(const supply::ItemCourse& course);

}  // namespace sparewell::desk
