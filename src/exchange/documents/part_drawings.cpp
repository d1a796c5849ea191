#include "exchange/documents/drawings.hpp"

namespace sparewell::exchange::drawings {

/// A cup that is open above, as a liner stands; `bottom` is where it ends.
static void cup(const Pen& pen, double bottom) {
  pen.rim({50, 18}, 50, 14);
  pen.line({{25, 18}, {30, bottom - 22}});
  pen.line({{75, 18}, {70, bottom - 22}});
  pen.curve({30, bottom - 22}, {32, bottom + 5}, {68, bottom + 5}, {70, bottom - 22});
}

void liner(const Pen& pen) {
  cup(pen, 92);
}

void liner_with_pin(const Pen& pen) {
  cup(pen, 66);
  pen.line({{40, 66}, {60, 66}});
  pen.thick(8);
  pen.line({{50, 66}, {50, 92}});
  pen.thick(3);
  for (const double y : {74.0, 81.0, 88.0}) pen.line({{43, y}, {57, y}});
}

void liner_with_seal(const Pen& pen) {
  cup(pen, 92);
  pen.thick(7);
  pen.curve({24, 48}, {38, 57}, {62, 57}, {76, 48});
  pen.curve({26, 62}, {40, 71}, {60, 71}, {74, 62});
}

void sleeve(const Pen& pen) {
  pen.rim({50, 14}, 56, 14);
  pen.line({{22, 14}, {32, 84}});
  pen.line({{78, 14}, {68, 84}});
  pen.rim({50, 84}, 36, 12);
  pen.thick(3);
  pen.curve({27, 46}, {40, 54}, {60, 54}, {73, 46});
  pen.curve({29, 60}, {42, 67}, {58, 67}, {71, 60});
}

void lock(const Pen& pen) {
  pen.box(18, 52, 70, 92);
  pen.line({{70, 72}, {82, 72}});
  pen.thick(9);
  pen.line({{86, 62}, {86, 82}});  // its release button
  pen.thick(7);
  pen.line({{44, 8}, {44, 72}});
  pen.thick(3);
  for (const double y : {14.0, 23.0, 32.0, 41.0}) pen.line({{36, y}, {52, y}});
}

void pin(const Pen& pen) {
  pen.filled({{26, 10}, {74, 10}, {66, 24}, {34, 24}});
  pen.line({{42, 24}, {42, 82}, {50, 92}, {58, 82}, {58, 24}});
  pen.thick(4);
  for (const double y : {36.0, 47.0, 58.0, 69.0, 80.0}) pen.line({{36, y}, {64, y}});
}

void valve(const Pen& pen) {
  // A flap that lets air out of the wall of a socket.
  pen.line({{8, 90}, {36, 90}});
  pen.line({{64, 90}, {92, 90}});
  pen.box(36, 70, 64, 96);
  pen.line({{28, 66}, {72, 58}});
  for (const double x : {30.0, 50.0, 70.0}) {
    pen.line({{x, 46}, {x, 12}});
    pen.line({{x - 8, 22}, {x, 12}, {x + 8, 22}});
  }
}

void pump(const Pen& pen) {
  pen.box(22, 40, 66, 90);
  pen.line({{44, 40}, {44, 14}});
  pen.line({{28, 12}, {60, 12}});
  pen.line({{22, 62}, {66, 62}});
  pen.line({{66, 80}, {90, 80}});
  pen.line({{82, 71}, {92, 80}, {82, 89}});
}

void sock(const Pen& pen) {
  pen.line({{26, 10}, {74, 10}, {72, 28}, {28, 28}}, true);
  pen.line({{28, 28}, {33, 72}});
  pen.line({{72, 28}, {67, 72}});
  pen.curve({33, 72}, {36, 96}, {64, 96}, {67, 72});
  pen.thick(2.5);
  for (const double y : {40.0, 52.0, 64.0, 76.0}) {
    pen.line({{34, y}, {42, y + 5}, {50, y}, {58, y + 5}, {66, y}});
  }
}

}  // namespace sparewell::exchange::drawings
