#include "desk/help_pictures.hpp"
#include "desk/picture/draw.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "desk/help_pages.hpp"
#include "desk/help_pictures/diagram.hpp"

namespace help_pictures_test {

using namespace sparewell::desk;
using namespace sparewell::picture;

/// Every letter is 7 wide, about as on the screen; letters of more than one byte count once.
Room help_room(double width) {
  Room made;
  made.width = width;
  made.height = 260;
  made.line_height = 17;
  made.text_width = [](std::string_view text) {
    const auto letters = std::ranges::count_if(
        text, [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; });
    return 7.0 * static_cast<double>(letters);
  };
  return made;
}

/// What the words cover.
Area covered(const Words& words, const Room& room) {
  double wide = room.text_width(words.text) * (words.strong ? 1.1 : 1);
  if (words.most_width > 0) wide = std::min(wide, words.most_width);
  Area area{words.at.x, words.at.y, words.at.x, words.at.y};
  if (words.across == Across::middle) area.left -= wide / 2;
  if (words.across == Across::right) area.left -= wide;
  area.right = area.left + wide;
  if (words.down == Down::middle) area.top -= room.line_height / 2;
  if (words.down == Down::bottom) area.top -= room.line_height;
  area.bottom = area.top + room.line_height;
  return area;
}

struct Covered {
  Area area;
  std::string text;
};

std::vector<Covered> word_areas(const Picture& picture, const Room& room) {
  std::vector<Covered> areas;
  for (const auto& mark : picture.marks) {
    const auto* words = std::get_if<Words>(&mark);
    if (words != nullptr && !words->text.empty())
      areas.push_back({covered(*words, room), words->text});
  }
  return areas;
}

std::vector<Spot> spots_of(const Mark& mark) {
  if (const auto* stroke = std::get_if<Stroke>(&mark)) return stroke->through;
  if (const auto* shape = std::get_if<Shape>(&mark)) return shape->outline;
  if (const auto* sign = std::get_if<Sign>(&mark)) return {sign->at};
  if (const auto* words = std::get_if<Words>(&mark)) return {words->at};
  const auto& area = std::get<Box>(mark).area;
  return {{area.left, area.top}, {area.right, area.bottom}};
}

/// Of the smaller one's area.
double overlap(const Area& a, const Area& b) {
  const double wide = std::min(a.right, b.right) - std::max(a.left, b.left);
  const double high = std::min(a.bottom, b.bottom) - std::max(a.top, b.top);
  if (wide <= 0 || high <= 0) return 0;
  const auto size = [](const Area& area) {
    return std::max(1.0, (area.right - area.left) * (area.bottom - area.top));
  };
  return wide * high / std::min(size(a), size(b));
}

TEST_CASE("Every page of the help has a picture with title, words, table and stops") {
  for (const auto& page : help_pages()) {
    CAPTURE(page.id);
    const auto make = help_picture(page.id);
    REQUIRE(make);
    const auto picture = make(help_room(640));
    CHECK(picture.title.find("an example") != std::string::npos);
    CHECK(picture.words.find("All names and figures in it are invented.") != std::string::npos);
    CHECK(picture.words.size() > 150);
    CHECK_FALSE(picture.marks.empty());
    REQUIRE_FALSE(picture.table.rows.empty());
    for (const auto& row : picture.table.rows) CHECK(row.size() == picture.table.headings.size());
    CHECK_FALSE(picture.stops.empty());
    for (const auto& stop : picture.stops) {
      CHECK_FALSE(stop.words.empty());
      CHECK_MESSAGE(std::ranges::count(picture.stops, stop.id, &Stop::id) == 1, stop.id);
    }
  }
  CHECK_FALSE(help_picture("no such page"));
}

TEST_CASE("The pictures of the help stay within their width, and words do not lie on words") {
  for (const auto& page : help_pages()) {
    for (const double width : {400.0, 534.0, 640.0, 900.0}) {
      CAPTURE(page.id);
      CAPTURE(width);
      const auto room = help_room(width);
      const auto picture = help_picture(page.id)(room);
      CHECK(picture.width <= width);
      for (const auto& mark : picture.marks) {
        for (const auto& at : spots_of(mark)) {
          CHECK(at.x >= -2);
          CHECK(at.x <= width + 2);
          CHECK(at.y >= -2);
          CHECK(at.y <= picture.height + 2);
        }
      }
      const auto areas = word_areas(picture, room);
      for (std::size_t i = 0; i < areas.size(); ++i) {
        CAPTURE(areas[i].text);
        CHECK(areas[i].area.left >= 0);
        CHECK(areas[i].area.right <= width + 2);
        for (std::size_t j = 0; j < i; ++j) {
          CAPTURE(areas[j].text);
          CHECK(overlap(areas[i].area, areas[j].area) < 0.2);
        }
      }
      for (const auto& stop : picture.stops) {
        CHECK(stop.area.right <= width + 2);
        CHECK(stop.area.bottom <= picture.height + 2);
      }
    }
  }
}

TEST_CASE("A help picture in a room without size does no harm") {
  auto room = help_room(0);
  room.height = 0;
  for (const auto& page : help_pages()) CHECK_FALSE(help_picture(page.id)(room).title.empty());
}

TEST_CASE("What is not known of a trip is not drawn as a life, and said to be unsafe") {
  const auto picture = help_picture("travel")(help_room(640));
  REQUIRE(picture.table.rows.size() == 3);
  CHECK(picture.table.rows[2][2] == "not known");
  CHECK(picture.stops[2].words.find("Unknown is not safe.") != std::string::npos);
  CHECK(picture.words.find("does not replace the judgement") != std::string::npos);
}

TEST_CASE("Words of a box are wrapped to its width, and end as sentences for screen readers") {
  const auto room = help_room(400);
  const auto lines = lines_in(room, "Correct them there and import that folder.", 120);
  CHECK(lines.size() > 2);
  for (const auto& line : lines) CHECK(room.text_width(line) <= 120);
  CHECK(box_words({"Shelf", "2 pieces"}) == "Shelf: 2 pieces.");
  CHECK(box_words({"", "no claim line"}) == "no claim line.");
  CHECK(as_sentence("Will it last?") == "Will it last?");
  const WordBox box{"Shelf", "2 pieces, kept with their lot and use-by date", SignForm::square};
  CHECK(box_height(room, box, 120) > box_height(room, box, 300));
}

}  // namespace help_pictures_test
