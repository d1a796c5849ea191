#include "exchange/documents/drawings.hpp"

namespace sparewell::exchange::drawings {

static void drop(const Pen& pen, Point top, double high) {
  const double wide = high * 0.55;
  const double low = top.y + high;
  pen.curve(top, {top.x - wide, top.y + high * 0.65}, {top.x - wide * 0.7, low}, {top.x, low});
  pen.curve(top, {top.x + wide, top.y + high * 0.65}, {top.x + wide * 0.7, low}, {top.x, low});
}

void wash(const Pen& pen) {
  pen.line({{8, 16}, {8, 34}});
  pen.line({{8, 25}, {40, 25}});
  pen.line({{24, 25}, {24, 10}});
  pen.line({{14, 10}, {34, 10}});
  pen.curve({40, 25}, {52, 25}, {54, 28}, {54, 38});
  pen.thick(4);
  drop(pen, {54, 42}, 12);
  drop(pen, {40, 52}, 12);
  drop(pen, {68, 52}, 12);
  pen.thick(usual_width);
  // A hand that is held open below.
  pen.curve({12, 74}, {26, 70}, {34, 84}, {54, 84});
  pen.curve({54, 84}, {70, 84}, {80, 74}, {92, 68});
  pen.curve({12, 90}, {30, 90}, {36, 96}, {54, 96});
  pen.curve({54, 96}, {76, 96}, {88, 84}, {92, 68});
}

static void air(const Pen& pen, double y) {
  pen.curve({68, y}, {76, y - 9}, {82, y + 9}, {94, y - 3});
}

void dry(const Pen& pen) {
  // A liner that stands with its opening down.
  pen.line({{14, 76}, {20, 40}});
  pen.line({{58, 76}, {52, 40}});
  pen.curve({20, 40}, {22, 14}, {50, 14}, {52, 40});
  pen.rim({36, 76}, 44, 10);
  pen.line({{36, 81}, {36, 92}});
  pen.line({{18, 94}, {54, 94}});
  pen.thick(4);
  air(pen, 28);
  air(pen, 48);
  air(pen, 68);
}

static void crossed_out(const Pen& pen) {
  pen.thick(7);
  pen.circle({50, 50}, 44);
  pen.line({{19, 19}, {81, 81}});
}

void no_heat(const Pen& pen) {
  pen.curve({52, 18}, {60, 36}, {76, 46}, {70, 64});
  pen.curve({70, 64}, {66, 82}, {36, 84}, {30, 64});
  pen.curve({30, 64}, {28, 52}, {38, 46}, {38, 36});
  pen.curve({38, 36}, {46, 42}, {44, 48}, {46, 50});
  pen.curve({46, 50}, {54, 42}, {54, 30}, {52, 18});
  crossed_out(pen);
}

void no_chemicals(const Pen& pen) {
  pen.box(42, 14, 58, 30);
  pen.line({{42, 30}, {34, 44}, {34, 80}, {66, 80}, {66, 44}, {58, 30}});
  pen.line({{34, 58}, {66, 58}});
  crossed_out(pen);
}

void look(const Pen& pen) {
  // A residual limb, and a lens over its end.
  pen.line({{12, 6}, {18, 52}});
  pen.line({{60, 6}, {54, 34}});
  pen.curve({18, 52}, {20, 66}, {26, 72}, {34, 72});
  pen.circle({58, 58}, 23);
  pen.thick(9);
  pen.line({{75, 75}, {92, 92}});
  pen.thick(usual_width);
  pen.dot({52, 54}, 4);
  pen.dot({64, 62}, 4);
}

void take_off(const Pen& pen) {
  pen.line({{18, 44}, {24, 74}});
  pen.line({{82, 44}, {76, 74}});
  pen.curve({24, 74}, {28, 98}, {72, 98}, {76, 74});
  pen.thick(8);
  pen.line({{50, 76}, {50, 18}});
  pen.line({{32, 34}, {50, 14}, {68, 34}});
}

static void crutch(const Pen& pen, double x, double lean) {
  pen.line({{x - 10, 12}, {x + 10, 12}});
  pen.line({{x, 12}, {x + lean, 92}});
  pen.line({{x + lean * 0.45 - 8, 48}, {x + lean * 0.45 + 10, 48}});
}

void crutches(const Pen& pen) {
  crutch(pen, 24, 8);
  crutch(pen, 68, 8);
  pen.thick(8);
  pen.line({{28, 92}, {36, 92}});
  pen.line({{72, 92}, {80, 92}});
}

void warning(const Pen& pen) {
  pen.thick(7);
  pen.line({{50, 10}, {94, 88}, {6, 88}}, true);
  pen.filled({{45, 36}, {55, 36}, {52, 66}, {48, 66}});
  pen.dot({50, 76}, 5);
}

void reacts(const Pen& pen) {
  drop(pen, {50, 18}, 58);
  crossed_out(pen);
}

void suitcase(const Pen& pen) {
  pen.box(10, 34, 90, 88);
  pen.line({{36, 34}, {36, 18}, {64, 18}, {64, 34}});
  pen.line({{26, 34}, {26, 88}});
  pen.line({{74, 34}, {74, 88}});
}

void telephone(const Pen& pen) {
  pen.line({{32, 6}, {68, 6}, {68, 94}, {32, 94}}, true);
  pen.thick(3);
  pen.line({{44, 15}, {56, 15}});
  pen.box(39, 24, 61, 74);
  pen.dot({50, 84}, 4);
}

void clinic(const Pen& pen) {
  pen.line({{8, 50}, {50, 12}, {92, 50}});
  pen.line({{20, 42}, {20, 90}, {80, 90}, {80, 42}});
  pen.box(42, 62, 58, 90);
}

void calendar(const Pen& pen) {
  pen.box(12, 20, 88, 88);
  pen.line({{12, 40}, {88, 40}});
  pen.line({{32, 10}, {32, 28}});
  pen.line({{68, 10}, {68, 28}});
  for (const double y : {54.0, 72.0}) {
    for (const double x : {30.0, 50.0, 70.0}) pen.dot({x, y}, 5);
  }
}

void tool(const Pen& pen) {
  pen.line({{12, 20}, {20, 12}, {46, 38}, {38, 46}}, true);
  pen.line({{42, 42}, {78, 78}});
  pen.filled({{74, 82}, {82, 74}, {92, 92}});
}

void question(const Pen& pen) {
  pen.box(10, 10, 90, 72);
  pen.line({{30, 72}, {26, 92}, {48, 72}});
  pen.curve({38, 32}, {38, 16}, {64, 18}, {62, 34});
  pen.curve({62, 34}, {60, 42}, {50, 42}, {50, 52});
  pen.dot({50, 62}, 4);
}

}  // namespace sparewell::exchange::drawings
