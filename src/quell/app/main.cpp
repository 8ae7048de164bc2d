// The program: everything is in the commands.
#include "quell/app/commands.h"

int main(int argc, char** argv) {
  return quell::app::run(argc, argv);
}
