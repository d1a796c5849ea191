/// Boxes with words and arrows between them.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "desk/picture/picture.hpp"

namespace sparewell::desk {

/// Free at the sides of a diagram, in units.
inline constexpr double diagram_edge = 8;

/// A box with a title and words below it; either may be "".
struct WordBox {
  std::string title;
  std::string text;
  std::optional<picture::SignForm> sign{};  ///< before the title
  bool needs_look = false;                  ///< drawn with a dashed border, and in the ink of alarm
  bool beside = false;                      ///< the text stands beside the title where both fit
};

/// With a full stop where it ends without one.
[[nodiscard]] std::string as_sentence(std::string words);

/// The box in one sentence or more, for screen readers.
[[nodiscard]] std::string box_words(const WordBox& box);

/// Wrapped words from this place down; gives the height of their end.
double add_text(picture::Picture& picture, const picture::Room& room, const std::string& text,
                picture::Spot at, double width, bool strong = false,
                picture::Ink ink = picture::Ink::text);

/// How high a box of that width must be for its words.
[[nodiscard]] double box_height(const picture::Room& room, const WordBox& box, double width);
/// Draws it, and adds a stop of this id.
void add_word_box(picture::Picture& picture, const picture::Room& room, const picture::Area& area,
                  const WordBox& box, const std::string& id);

/// A line with a head at its end.
void add_arrow(picture::Picture& picture, const picture::Room& room,
               std::vector<picture::Spot> through, picture::Line line = picture::Line::solid);

/// A sign on a ground of its own, so that lines do not cross it.
void add_lone_sign(picture::Picture& picture, const picture::Room& room, picture::Spot at,
                   picture::SignForm form, picture::Ink ink);

/// Draws `inner` below a heading that says what the example is, and gives it this title. Words that
/// say that it is invented stand before those of `inner`.
[[nodiscard]] picture::Maker as_example(picture::Maker inner, std::string title,
                                        std::string heading);

}  // namespace sparewell::desk
