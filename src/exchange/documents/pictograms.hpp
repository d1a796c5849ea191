/// Small drawings that stand beside words on papers for patients, never without them. All are drawn
/// for this program.
#pragma once

#include <string>
#include <vector>

struct _cairo;

namespace sparewell::exchange {

enum class Pictogram {
  none,
  liner,
  liner_with_pin,
  liner_with_seal,
  sleeve,
  lock,
  pin,
  valve,
  pump,
  sock,
  wash,          ///< by hand, under a tap
  dry,           ///< upright in the air
  no_heat,       ///< a flame, crossed out
  no_chemicals,  ///< a bottle, crossed out
  look,          ///< a lens over a residual limb
  take_off,      ///< an arrow out of a socket
  crutches,
  warning,  ///< a triangle with an exclamation mark
  reacts,   ///< a drop, crossed out
  suitcase,
  telephone,
  clinic,  ///< a house
  calendar,
  tool,     ///< a screwdriver
  question  ///< a question mark in a bubble
};

/// A picture with its words.
struct PicturedWords {
  Pictogram picture = Pictogram::none;
  std::string words;
  bool bold = false;
};

struct PicturedSection {
  PicturedWords heading;
  std::vector<PicturedWords> lines;
};

/// Draws in black lines into a square of that side, in points.
void draw_pictogram(_cairo* context, Pictogram which, double x, double y, double side);

}  // namespace sparewell::exchange
