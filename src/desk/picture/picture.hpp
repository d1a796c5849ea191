/// A picture of figures as plain data: what is drawn where, in words, and as a table. It is made
/// here without a screen, and painted by one module of the window, on the screen and on paper.
#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace sparewell::picture {

/// What a stroke or an area is for; the painter gives it the system's colours, dark or light, or
/// black on paper. Nothing is told by ink alone: shape, fill, line or words say it as well.
enum class Ink {
  paper,   ///< the ground
  text,    ///< words and what is most certain
  faint,   ///< axes and grids
  past,    ///< what has been
  ahead,   ///< what is foreseen
  chosen,  ///< behind what is chosen
  alarm    ///< needs a person; always with words or a shape of its own
};
enum class Fill { none, solid, hatched, dotted };
enum class Line { none, solid, dashed, dotted };

struct Spot {
  double x = 0;
  double y = 0;
};

struct Area {
  double left = 0;
  double top = 0;
  double right = 0;
  double bottom = 0;
  [[nodiscard]] bool holds(double x, double y) const {
    return x >= left && x <= right && y >= top && y <= bottom;
  }
};

struct Stroke {
  std::vector<Spot> through;
  Ink ink = Ink::text;
  Line line = Line::solid;
  double width = 1;
};

/// A rectangle; corners are rounded where `radius` is above 0.
struct Box {
  Area area;
  Ink ink = Ink::past;
  Fill fill = Fill::solid;
  Line border = Line::none;
  double border_width = 1;
  double radius = 0;
};

/// A closed outline, such as a band between two curves.
struct Shape {
  std::vector<Spot> outline;
  Ink ink = Ink::ahead;
  Fill fill = Fill::hatched;
  Line border = Line::none;
};

enum class SignForm { disc, diamond, square, triangle, flag, cross, ring, check, question };
/// A small sign at a place; `size` is half its height.
struct Sign {
  Spot at;
  SignForm form = SignForm::disc;
  double size = 4;
  Ink ink = Ink::text;
  bool filled = true;
};

enum class Across { left, middle, right };  ///< which end of the words is at the place
enum class Down { top, middle, bottom };
struct Words {
  Spot at;
  std::string text;
  Across across = Across::left;
  Down down = Down::top;
  Ink ink = Ink::text;
  bool strong = false;
  double most_width = 0;  ///< cut with "…" beyond it; 0 for no limit
};

using Mark = std::variant<Stroke, Box, Shape, Sign, Words>;

/// A part of the picture that can be pointed at, gone to with the arrow keys, and chosen.
struct Stop {
  std::string id;     ///< of what it stands for; the same when the picture is drawn again
  std::string words;  ///< what it says, for tooltips and screen readers
  Area area;
};

struct FigureTable {
  std::vector<std::string> headings;
  std::vector<std::vector<std::string>> rows;
};

struct Picture {
  double width = 0;
  double height = 0;  ///< may exceed the room: the painter then scrolls
  double fixed_top =
      0;  ///< so much at the top stays in place while the rest scrolls, such as an axis
  std::vector<Mark> marks;  ///< in the order in which they are painted
  std::vector<Stop> stops;  ///< in the order of the arrow keys
  std::string title;        ///< what it shows, in a few words
  std::string words;        ///< what it says as a whole, in sentences: its text equivalent
  FigureTable table;        ///< the same figures, to be copied
};

/// The room that there is, as the painter measured it.
struct Room {
  double width = 0;
  double height = 0;
  double line_height = 0;                              ///< of the font
  double unit = 1;                                     ///< one device-independent pixel
  std::function<double(std::string_view)> text_width;  ///< in the font of the window
};

/// Draws the same figures into any room.
using Maker = std::function<Picture(const Room&)>;

}  // namespace sparewell::picture
