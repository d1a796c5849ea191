/// One function for each pictogram.
#pragma once

#include "exchange/documents/pen.hpp"

namespace sparewell::exchange::drawings {

// part_drawings.cpp
void liner(const Pen& pen);
void liner_with_pin(const Pen& pen);
void liner_with_seal(const Pen& pen);
void sleeve(const Pen& pen);
void lock(const Pen& pen);
void pin(const Pen& pen);
void valve(const Pen& pen);
void pump(const Pen& pen);
void sock(const Pen& pen);

// sign_drawings.cpp
void wash(const Pen& pen);
void dry(const Pen& pen);
void no_heat(const Pen& pen);
void no_chemicals(const Pen& pen);
void look(const Pen& pen);
void take_off(const Pen& pen);
void crutches(const Pen& pen);
void warning(const Pen& pen);
void reacts(const Pen& pen);
void suitcase(const Pen& pen);
void telephone(const Pen& pen);
void clinic(const Pen& pen);
void calendar(const Pen& pen);
void tool(const Pen& pen);
void question(const Pen& pen);

}  // namespace sparewell::exchange::drawings
